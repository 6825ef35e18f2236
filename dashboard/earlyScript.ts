import type { Plugin } from 'vite';

const HERE = /\s*<!-- early\.ts stands here[^>]*-->/;

/**
 * Puts early.ts into the page itself as a plain script, so that it runs before anything is fetched; Vite
 * makes modules only. The hub names its hash in the content security policy (hub/api/inlined.ts).
 */
export function earlyScript(): Plugin {
  return {
    name: 'early-script',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle }) {
        for (const built of Object.values(bundle ?? {})) {
          if (built.type !== 'chunk' || built.name !== 'early' || !HERE.test(html)) continue;
          return html.replace(HERE, () => `\n    <script>${built.code.trim()}</script>`);
        }
        throw new Error('Expected early.ts in the build and its place in index.html, got neither');
      },
    },
  };
}
