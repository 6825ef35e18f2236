import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const LEAST = 600; // bytes; ours: less gains nothing

/** Leaves a .br and a .gz beside each file of the build, so that the hub's board need not make them. */
export function squeezed(folder: string): Plugin {
  return {
    name: 'squeezed',
    closeBundle() {
      for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' })) {
        if (!/\.(js|css|html|svg|json)$/.test(name)) continue;
        const file = join(folder, name);
        const bytes = readFileSync(file);
        if (bytes.length < LEAST) continue;
        writeFileSync(`${file}.br`, brotliCompressSync(bytes));
        writeFileSync(`${file}.gz`, gzipSync(bytes, { level: 9 }));
      }
    },
  };
}
