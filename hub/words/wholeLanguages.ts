import type { Language, LanguageCode } from './languages.ts';

// All of each language, for a hub.

/** Names in `A` that `B` does not have. */
type Beyond<A, B> = {
  [Key in keyof A]: Key extends keyof B
    ? A[Key] extends string | readonly unknown[] | ((...told: never[]) => unknown)
      ? never
      : Beyond<A[Key], B[Key]>
    : Key;
}[keyof A];

/** The file itself where it has every name of English and no other; else nothing fits. */
type Whole<T extends Language> = [Beyond<T, Language>] extends [never]
  ? T
  : { readonly leftOver: Beyond<T, Language> };
const whole = <T extends Language>(language: Promise<T & Whole<T>>): Promise<Language> => language;

export const wholeLanguages: Readonly<Record<LanguageCode, () => Promise<Language>>> = {
  en: () => whole(import('./en.ts')),
  de: () => whole(import('./de.ts')),
};
