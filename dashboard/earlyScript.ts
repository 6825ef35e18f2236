import type { Plugin } from 'vite';

const HERE = /\s*<!-- early\.ts stands here[^>]*-->/;

/** Puts early.ts into the page as a plain script that holds up the drawing; Vite itself makes modules only. */
export function earlyScript(): Plugin {
  return {
    name: 'early-script',
    transformIndexHtml: {
      order: 'post',
      handler(html, { bundle }) {
        const built = Object.values(bundle ?? {}).find(
          (one) => one.type === 'chunk' && one.name === 'early',
        );
        if (!built || !HERE.test(html))
          throw new Error('Expected early.ts in the build and its place in index.html, got neither');
        return html.replace(HERE, `\n    <script src="/${built.fileName}"></script>`);
      },
    },
  };
}
