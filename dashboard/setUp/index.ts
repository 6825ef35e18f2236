export { StepList } from './StepList.tsx';
export { StepPage } from './StepPage.tsx';
