export { LossesPage } from './LossesPage.tsx';
