// One file to fetch for both: who enters a picking looks next at what it earned.
export { PicksPage } from './PicksPage.tsx';
export { WorthPage } from './WorthPage.tsx';
