import { existsSync, mkdirSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const MARKER = '.dewpost-demonstration';

/**
 * An empty folder for a demonstration. An older one is removed first, but only when it is ours:
 * somebody who names the wrong folder must not lose what is in it.
 */
export function freshDemoFolder(folder: string): void {
  if (existsSync(folder)) {
    const inside = readdirSync(folder);
    if (inside.length > 0 && !inside.includes(MARKER)) {
      throw new Error(
        `Expected --data to be empty or an older demonstration (a folder with ${MARKER} in it), got ${folder}`,
      );
    }
    rmSync(folder, { recursive: true });
  }
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, MARKER), 'Made by the demonstration; removed when it starts again.\n');
}
