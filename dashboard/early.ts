// Runs before anything is drawn, and before the rest of the page is here: whether the page is light or
// dark, and the first question to the hub, whose answer comes while the rest is still on its way. It
// imports nothing, because it stands in the page itself (earlyScript.ts).

(() => {
  const root = document.documentElement;
  const key = 'dewpost scheme';
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const kept = () => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null; // storage that is forbidden: as the device says
    }
  };
  let chosen = kept();
  const paint = () => {
    const is = chosen === 'light' || chosen === 'dark' ? chosen : dark.matches ? 'dark' : 'light';
    root.dataset.scheme = is;
    // The empty page before there is a style for it, and the browser's own bar.
    document.querySelector('meta[name=color-scheme]')?.setAttribute('content', is);
    for (const bar of document.querySelectorAll('meta[name=theme-color]'))
      bar.setAttribute('content', is === 'dark' ? '#191713' : '#f6f1e6');
  };
  paint();
  dark.addEventListener('change', paint);
  addEventListener(key, (event) => {
    chosen = (event as CustomEvent<string>).detail;
    paint();
  });
  // Chosen on another page of this browser.
  addEventListener('storage', () => {
    chosen = kept();
    paint();
  });

  window.early = fetch('/api/first', { signal: AbortSignal.timeout(20_000) });
  window.early.catch(() => {}); // who waits for it hears of it; nobody does on a page that is left
})();
