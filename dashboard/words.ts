import { languages } from '../hub/words/page.ts';
import { firstReading } from './reading.ts';

// The one place that says which language the screens speak. Its file is fetched before anything that
// needs a word is run, and no other is.

const { language } = await firstReading();
export const words = await languages[language].screens();
