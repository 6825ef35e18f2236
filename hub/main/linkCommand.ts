import { chmodSync, mkdirSync, rmSync, symlinkSync } from 'node:fs';
import { join, relative } from 'node:path';
import { packageRoot } from './package.ts';

// npm links the commands of packages that are installed, not that of the package one stands in:
// without this, `npx dewpost` in a checkout would try to install it anew.
const bin = join(packageRoot, 'node_modules', '.bin');
const command = join(packageRoot, 'dist', 'hub', 'dewpost.js');
const link = join(bin, 'dewpost');
mkdirSync(bin, { recursive: true });
rmSync(link, { force: true });
symlinkSync(relative(bin, command), link);
chmodSync(command, 0o755);
