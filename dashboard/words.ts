// The one place that says which language the screens speak.
export { screens as words } from '../hub/words/index.ts';
