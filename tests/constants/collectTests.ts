// As much of the test runner's ways as tests of formulas use: they are gathered once per changed
// number and run in this process. Anything else is refused by name rather than skipped.

export type Gathered = {
  readonly file: string;
  readonly name: string;
  readonly run: () => unknown;
};

type Body = (...args: never[]) => unknown;
type Options = { readonly skip?: boolean } | number;

/** A stand-in for the runner's module, and the list that the tests put themselves into. */
export function collectTests(expect: unknown) {
  const gathered: Gathered[] = [];
  const after: (() => unknown)[] = [];
  let file = '';
  const add = (name: string, run: () => unknown) => gathered.push({ file, name, run });
  const bodyOf = (a: Body | Options | undefined, b: Body | Options | undefined) => {
    const body = typeof a === 'function' ? a : b;
    if (typeof body !== 'function') throw new Error('Expected a test with a body, got none');
    return body as (...args: unknown[]) => unknown;
  };
  const context = { expect };

  const test = (name: string, a: Body | Options, b?: Body | Options) => {
    const body = bodyOf(a, b);
    add(name, () => body(context));
  };
  const over =
    (spread: boolean) =>
    (rows: readonly unknown[]) =>
    (name: string, a: Body | Options, b?: Body | Options) => {
      const body = bodyOf(a, b);
      for (const [i, row] of rows.entries())
        add(`${name} [${i}]`, () =>
          spread && Array.isArray(row) ? body(...row) : body(row, context),
        );
    };
  const nothing = Object.assign(() => {}, { for: () => () => {}, each: () => () => {} });
  const all = Object.assign(test, {
    for: over(false),
    each: over(true),
    skip: nothing,
    todo: nothing,
  });
  Object.assign(all, {
    skipIf: (skip: boolean) => (skip ? nothing : all),
    runIf: (run: boolean) => (run ? all : nothing),
  });
  const describe = Object.assign(
    (_name: string, a: Body | Options, b?: Body | Options) => bodyOf(a, b)(),
    {
      skipIf: (skip: boolean) => (skip ? nothing : describe),
    },
  );
  const module = {
    expect,
    test: all,
    it: all,
    describe,
    beforeAll: (body: () => unknown) => add('before all', body),
    afterAll: (body: () => unknown) => after.push(body),
  };
  return {
    gathered,
    after,
    begin: (path: string) => {
      file = path;
    },
    module: new Proxy(module, {
      get(target, name) {
        if (name in target) return Reflect.get(target, name);
        if (typeof name === 'symbol' || name === '__esModule' || name === 'default')
          return undefined;
        throw new Error(`Expected test, expect, describe or beforeAll, got ${name}`);
      },
    }),
  };
}
