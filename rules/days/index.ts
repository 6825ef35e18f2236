export { type DayFacts, type DayRule, dayFacts } from './dayFacts.ts';
