/** New readings wait together before they go to their places; readings too old are let go of. */
export const inbox = `
  -- What came in since readings were last put in their places, one row a commit: a commit then
  -- writes one page, not one for every series in it. body: JSON, see hub/store/inbox.ts.
  CREATE TABLE inbox (id INTEGER PRIMARY KEY, body TEXT NOT NULL);
  -- Readings before from_t may be gone. first_day: the first day that can be made again from
  -- readings; facts of days before it stay as they were made.
  CREATE TABLE raw_kept (
    only_one INTEGER PRIMARY KEY CHECK (only_one = 1),
    from_t INTEGER NOT NULL, first_day TEXT NOT NULL
  );
`;
