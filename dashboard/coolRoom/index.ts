// One file to fetch for both: the sheet for paper is a part of the page.
export { CoolRoomPage } from './CoolRoomPage.tsx';
export { RecordPage } from './RecordPage.tsx';
