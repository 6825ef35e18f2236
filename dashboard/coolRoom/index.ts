// One file to fetch for all: the sheets for paper are parts of the page.
export { CoolRoomPage } from './CoolRoomPage.tsx';
export { RecordPage } from './RecordPage.tsx';
export { SolarPage } from './SolarPage.tsx';
