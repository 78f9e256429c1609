/**
 * The language of the screens. What the screens of a folder say stands in its `texts.ts`, as one object a language;
 * a language that is named here has to be given in every one of them, or the types do not hold.
 */
export type Language = 'en';

/** The language shown: the one place where it is chosen. */
export const language: Language = 'en';

type Others<T> = { readonly [other in Exclude<Language, 'en'>]: NoInfer<T> };

/** The texts of a folder in the language shown. English says which texts there are. */
export const inLanguage = <T>(texts: { readonly en: T } & Others<T>): T => texts[language];
