import type { First } from '../hub/contract/index.ts';

declare global {
  interface Window {
    /** The hub's answer to `/api/first`, asked for by early.ts before the page was here; used once. */
    early?: Promise<Response> | undefined;
  }
}

const firstIn = (answer: Response | undefined): Promise<First | null> =>
  answer?.ok ? answer.json().catch(() => null) : Promise.resolve(null);

const answered = () => window.early?.catch(() => undefined);

/** What the early answer says, left there to be used; null for none, or one that is no use. */
export const peekEarly = async (): Promise<First | null> => firstIn((await answered())?.clone());

/** The early answer, which is used up by this. */
export async function takeEarly(): Promise<First | null> {
  const early = answered();
  window.early = undefined;
  return firstIn(await early);
}
