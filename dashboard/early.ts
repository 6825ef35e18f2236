// Runs before anything is drawn, and before the rest of the page is here: whether the page is light or
// dark, and the first question to the hub, whose answer comes while the rest is still on its way. It
// imports nothing, because a module would wait until the page was read.

(() => {
  const root = document.documentElement;
  const dark = matchMedia('(prefers-color-scheme: dark)');
  const paint = (chosen: string | null) => {
    const scheme = chosen ?? (dark.matches ? 'dark' : 'light');
    root.dataset.scheme = scheme;
    root.style.colorScheme = scheme; // before there is a style: the canvas and the scroll bars
  };
  const chosen = () => {
    try {
      const found = localStorage.getItem('dewpost scheme');
      return found === 'light' || found === 'dark' ? found : null;
    } catch {
      return null; // storage that is forbidden: as the device says
    }
  };
  paint(chosen());
  dark.addEventListener('change', () => paint(chosen()));
  addEventListener('dewpost scheme', () => paint(chosen()));
  // Of another page of this browser.
  addEventListener('storage', () => paint(chosen()));

  window.early = fetch('/api/first', { signal: AbortSignal.timeout(20_000) });
  window.early.catch(() => {}); // who waits for it hears of it; nobody does on a page that is left
})();
