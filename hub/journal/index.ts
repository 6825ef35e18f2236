export { type Entry, type JournalBook, journalBook, type Undone, undoneIn } from './journalBook.ts';
