import { expect, test } from 'vitest';
import { find, match } from '../../dashboard/router.ts';

const routes = [
  { path: '/' },
  { path: '/places' },
  { path: '/places/:id' },
  { path: '/probes' },
] as const;

test.for([
  ['/', '/', {}],
  ['/places', '/places', {}],
  ['/places/', '/places', {}],
  ['/places/long-house', '/places/:id', { id: 'long-house' }],
  ['/places/n%C3%B3', '/places/:id', { id: 'nó' }],
] as const)('%s leads to %s', ([path, pattern, params]) => {
  expect(find(routes, path)).toEqual({ route: { path: pattern }, params });
});

test.for(['/place', '/places/a/b', '/nowhere'])('%s leads nowhere', (path) => {
  expect(find(routes, path)).toBeNull();
});

test('a broken escape in an address is a wrong address, not an exception', () => {
  expect(match('/places/:id', '/places/%E0%A4%A')).toBeNull();
});
