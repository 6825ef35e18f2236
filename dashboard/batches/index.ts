// One file to fetch for the whole page.
export { BatchesPage } from './BatchesPage.tsx';
