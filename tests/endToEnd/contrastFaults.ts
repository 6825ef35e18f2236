import type { Page } from 'playwright-core';

// Contrast as WCAG 2.2 defines it (relative luminance and contrast ratio, "Definitions"), over the styles
// the browser came to: of every text against what lies behind it, of every mark that means something.

/** Grid lines, areas behind a curve and hairlines between rows: they carry no meaning of their own. */
const GROUND = [
  ...['hour', 'midnight', 'tick', 'frame', 'night', 'fan', 'fan-many', 'band', 'said', 'tick-line'],
  ...['measured-halo', 'stop-window', 'heat-need', 'heat-lived', 'bar-ground', 'bar-ground-inBand'],
  ...['hold-limit', 'graticule'],
];

const SCRIPT = (text: number, mark: number) => `(() => {
  const faults = new Map();
  const canvas = new OffscreenCanvas(1, 1).getContext('2d', { willReadFrequently: true });
  const known = new Map();
  const read = (colour) => {
    if (!known.has(colour)) {
      canvas.clearRect(0, 0, 1, 1);
      canvas.fillStyle = colour;
      canvas.fillRect(0, 0, 1, 1);
      const [r, g, b, a] = canvas.getImageData(0, 0, 1, 1).data;
      known.set(colour, [r, g, b, a / 255]);
    }
    return known.get(colour);
  };
  const over = ([r, g, b, a], below) => [r, g, b].map((one, i) => one * a + below[i] * (1 - a));
  const luminance = (rgb) => {
    const [r, g, b] = rgb.map((one) => one / 255).map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const ratio = (one, other) => {
    const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
    return (light + 0.05) / (dark + 0.05);
  };
  const grounds = new Map();
  const ground = (one) => {
    if (one === null) return [255, 255, 255];
    if (!grounds.has(one)) {
      const own = read(getComputedStyle(one).backgroundColor);
      grounds.set(one, own[3] === 1 ? own.slice(0, 3) : over(own, ground(one.parentElement)));
    }
    return grounds.get(one);
  };
  const opacities = new Map([[null, 1]]);
  const opacity = (one) => {
    if (!opacities.has(one)) opacities.set(one, Number(getComputedStyle(one).opacity) * opacity(one.parentElement));
    return opacities.get(one);
  };
  const night = read(getComputedStyle(document.documentElement).getPropertyValue('--night').trim()).slice(0, 3);
  const nights = new Map();
  const overNight = (drawing) => {
    if (!nights.has(drawing)) nights.set(drawing, drawing.querySelector('.night') !== null);
    return nights.get(drawing);
  };
  const hold = (one, colour, least, what) => {
    const [r, g, b, a] = read(colour);
    const drawing = one.closest('svg');
    const paper = ground(drawing?.parentElement ?? one);
    // On a strip the night lies behind some of it.
    for (const below of drawing && overNight(drawing) ? [paper, night] : [paper]) {
      const found = ratio(over([r, g, b, a * opacity(one)], below), below);
      const key = what + ' ' + one.tagName.toLowerCase() + '.' + (one.getAttribute('class') ?? one.parentElement.getAttribute('class'));
      if (found < least - 0.005 && !faults.has(key)) faults.set(key, key + ' has ' + found.toFixed(2) + ' to 1, ' + least + ' asked: ' + one.textContent.trim().slice(0, 30));
    }
  };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  const done = new Set();
  while (walker.nextNode()) {
    const one = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || done.has(one) || one.closest('.unseen, .skip, option, title, desc, noscript') || one.matches(':disabled')) continue;
    done.add(one);
    if (!one.checkVisibility({ visibilityProperty: true })) continue;
    const style = getComputedStyle(one);
    hold(one, one instanceof SVGElement ? style.fill : style.color, ${text}, 'text');
  }
  const drawn = new Map();
  const GROUND = new Set(${JSON.stringify(GROUND)});
  for (const one of document.querySelectorAll('svg path, svg rect, svg circle, svg line, svg polygon, svg polyline, svg ellipse')) {
    if (one.closest('defs') || [...one.classList, ...(one.parentElement?.classList ?? [])].some((name) => GROUND.has(name))) continue;
    // A season of days is drawn with the same few inks: twenty of each tell.
    const kind = one.tagName + one.getAttribute('class') + one.parentElement.getAttribute('class');
    const had = drawn.get(kind) ?? 0;
    drawn.set(kind, had + 1);
    if (had >= 20 || !one.checkVisibility({ visibilityProperty: true })) continue;
    const { fill, stroke } = getComputedStyle(one);
    // Told by its line or by its area, whichever is plainer.
    const inks = [stroke, fill].filter((ink) => ink !== 'none' && !ink.startsWith('url') && read(ink)[3] > 0);
    const plain = inks.sort((a, b) => read(b)[3] - read(a)[3])[0];
    if (plain) hold(one, plain, ${mark}, 'mark');
  }
  for (const one of document.querySelectorAll('main button:not(.plain), main input, main select, main textarea'))
    if (one.checkVisibility({ visibilityProperty: true }) && !one.matches('[type=checkbox], [type=radio], [type=file], .unseen'))
      hold(one.parentElement, getComputedStyle(one).borderTopColor, ${mark}, 'edge of ' + one.tagName.toLowerCase() + ' in');
  return [...faults.values()];
})()`;

/** @param least the ratio of texts; marks and edges of controls have 3 to 1 (WCAG 2.2, 1.4.11). */
export const contrastFaults = (page: Page, least: number) =>
  page.evaluate<string[]>(SCRIPT(least, 3));
