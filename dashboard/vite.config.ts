import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { earlyScript } from './earlyScript.ts';
import { squeezed } from './squeezed.ts';

const built = new URL('../dist/dashboard', import.meta.url).pathname;

export default defineConfig({
  base: '/',
  plugins: [preact(), earlyScript(), squeezed(built)],
  build: {
    outDir: '../dist/dashboard',
    emptyOutDir: true,
    target: 'es2022',
    // The hub answers with default-src 'self': nothing may be inlined as a data: address.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // Every file of the build, so that the browser can keep those of pages nobody has opened yet.
    manifest: 'files.json',
    rolldownOptions: {
      input: {
        main: new URL('./index.html', import.meta.url).pathname,
        early: new URL('./early.ts', import.meta.url).pathname,
        shell: new URL('./shell.ts', import.meta.url).pathname,
      },
      output: {
        // Its address says which pages it may serve, so it stands at the top and keeps its name.
        entryFileNames: ({ name }) => (name === 'shell' ? 'shell.js' : 'assets/[name]-[hash].js'),
      },
    },
  },
});
