import preact from '@preact/preset-vite';
import { defineConfig } from 'vite';
import { earlyScript } from './earlyScript.ts';
import { squeezed } from './squeezed.ts';

const built = new URL('../dist/dashboard', import.meta.url).pathname;

/** What the hub's folders give to both the screens and their languages. */
const NOT_OF_A_LANGUAGE = /\/(?:hub|rules)\/(?!words\/(?:en|de)\.ts)/;

/** All but what runs outside the page's own modules. */
const NOT_ALONE = /^(?!.*\/dashboard\/(?:early|shell)\.ts)/;

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
        // A browser asks for six files at a time, and a phone far off waits long for each round: what
        // Today needs comes in few. A language waits for nothing of the screens, which wait for it.
        codeSplitting: {
          groups: [
            { name: 'figures', test: NOT_OF_A_LANGUAGE, minShareCount: 2, priority: 2 },
            { name: 'screens', test: NOT_ALONE, tags: ['$initial'], priority: 1 },
          ],
        },
      },
    },
  },
});
