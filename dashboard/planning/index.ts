// One file to fetch for both: the sheet for paper is a part of the page.
export { SowingPage } from './SowingPage.tsx';
export { WeekPage } from './WeekPage.tsx';
