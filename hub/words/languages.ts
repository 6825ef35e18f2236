import type * as english from './en.ts';

// The languages there are. Each is one file beside en.ts, loaded only where it is spoken; a line here and
// one in wholeLanguages.ts name it.

/** A text of English is any text in another language; what it is given and its names are the same. */
type Said<T> = T extends string
  ? string
  : T extends RegExp
    ? RegExp
    : T extends (...told: infer Told) => infer Answer
      ? (...told: Told) => Said<Answer>
      : { [Key in keyof T]: Said<T[Key]> };

export type Language = { readonly [Name in keyof typeof english]: Said<(typeof english)[Name]> };

type Listed = {
  /** In its own tongue. */
  readonly name: string;
  /** What pages say, without the sentences of the hub. */
  readonly screens: () => Promise<Language['screens']>;
};

/** By their code (BCP 47). */
export const languages = {
  en: { name: 'English', screens: () => import('./en.ts').then(({ screens }) => screens) },
  de: { name: 'Deutsch', screens: () => import('./de.ts').then(({ screens }) => screens) },
} satisfies Readonly<Record<string, Listed>>;

export type LanguageCode = keyof typeof languages;
export const languageCodes = Object.keys(languages) as LanguageCode[];
export const isLanguage = (code: unknown): code is LanguageCode =>
  typeof code === 'string' && Object.hasOwn(languages, code);

/** The first of those wanted (`de-AT`, `en`) that there is; English where there is none. */
export const nearestLanguage = (wanted: readonly string[]): LanguageCode =>
  wanted.map((one) => one.toLowerCase().split('-')[0]).find(isLanguage) ?? 'en';
