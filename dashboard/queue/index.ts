export { known, oldestAnswer, showsBefore } from './known.ts';
export { forgetKnown, MOST_KNOWN } from './knownBook.ts';
export { kindOf, type SaidKind } from './mayWait.ts';
export { handOver, keepPhoto, MOST_PHOTO_BYTES } from './photosKept.ts';
export { cameToWait, say, sendAgain, Waits } from './say.ts';
export { sendNow, sendWaiting, whenStored } from './sendWaiting.ts';
export {
  addSaid,
  dropSaid,
  isOwn,
  ofOthers,
  photosIn,
  reread,
  type Said,
  startWaits,
  waiting,
} from './waits.ts';
