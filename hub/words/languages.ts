import type * as english from './en.ts';

// The languages there are. Each is one file beside en.ts, loaded only where it is spoken.

/** A text of English is any text in another language; what it is given and its names are the same. */
type Said<T> = T extends string
  ? string
  : T extends (...told: infer Told) => infer Answer
    ? (...told: Told) => Said<Answer>
    : { [Key in keyof T]: Said<T[Key]> };

export type Language = { readonly [Name in keyof typeof english]: Said<(typeof english)[Name]> };

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

type Listed = {
  /** In its own tongue. */
  readonly name: string;
  /** All of it, for a hub. */
  readonly load: () => Promise<Language>;
};

/** By their code (BCP 47). */
export const languages = {
  en: { name: 'English', load: () => whole(import('./en.ts')) },
} satisfies Readonly<Record<string, Listed>>;

export type LanguageCode = keyof typeof languages;
export const languageCodes = Object.keys(languages) as LanguageCode[];
export const isLanguage = (code: unknown): code is LanguageCode =>
  typeof code === 'string' && Object.hasOwn(languages, code);

/** The first of those wanted (`de-AT`, `en`) that there is; English where there is none. */
export const nearestLanguage = (wanted: readonly string[]): LanguageCode =>
  wanted.map((one) => one.toLowerCase().split('-')[0]).find(isLanguage) ?? 'en';
