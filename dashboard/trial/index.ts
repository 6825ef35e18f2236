export { TrialPage } from './TrialPage.tsx';
