/** Entries of one kind in the order they came: lots and checks are read anew from where one was. */
export const journalByKind = `
  CREATE INDEX journal_by_kind ON journal (what, id);
`;
