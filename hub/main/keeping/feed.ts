import type { Happening as Told } from '../../api/index.ts';

/** What happens in the hub, told to whoever listens. */
export type Happening = Told;
type Listener<Name extends keyof Happening> = (what: Happening[Name]) => void;

export function makeFeed(onFault: (error: unknown) => void) {
  const listeners: { [Name in keyof Happening]: Set<Listener<Name>> } = {
    readings: new Set(),
    task: new Set(),
    alarm: new Set(),
    alarms: new Set(),
    looked: new Set(),
    store: new Set(),
    farm: new Set(),
  };
  return {
    /** @returns a function that stops listening. */
    on<Name extends keyof Happening>(name: Name, listener: Listener<Name>): () => void {
      listeners[name].add(listener);
      return () => listeners[name].delete(listener);
    },
    tell<Name extends keyof Happening>(name: Name, what: Happening[Name]) {
      for (const listener of listeners[name])
        try {
          listener(what);
        } catch (error) {
          onFault(error); // one broken listener never keeps the others from hearing
        }
    },
  };
}
export type Feed = ReturnType<typeof makeFeed>;
