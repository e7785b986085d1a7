/** The language of the page: English or Spanish, from the browser at first, then as chosen. */

export type Language = "en" | "es";

/** A text in both languages. */
export type Pair = readonly [en: string, es: string];

const KEY = "rimewise.language";

function wanted(): Language {
  try {
    const kept = localStorage.getItem(KEY);
    if (kept === "en" || kept === "es") return kept;
  } catch {
    // Storage is switched off: the browser's own language then, at every visit.
  }
  return /^es\b/i.test(navigator.language) ? "es" : "en";
}

/** The language of this load of the page. */
export const LANGUAGE: Language = wanted();

/** Keeps a language and loads the page anew in it; what was entered is kept and comes back. */
export function chooseLanguage(language: Language): void {
  try {
    localStorage.setItem(KEY, language);
  } catch {
    // Nothing to keep it in.
  }
  location.reload();
}

/** The text in the page's language. */
export function say(pair: Pair): string {
  return pair[LANGUAGE === "es" ? 1 : 0];
}

/** Puts figures into the places `{name}` of a text. */
export function fill(text: string, values: Record<string, string | number>): string {
  return text.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
}

/**
 * Makes a table of names in the page's language. `K` are the names that must be there, so that a new name of the
 * library is a compile error; names that only a later library knows may be there already.
 */
export function names<K extends string>() {
  return <T extends Record<K, Pair>>(table: T): Readonly<Record<string, string>> & Record<K, string> =>
    Object.fromEntries(Object.entries<Pair>(table).map(([name, pair]) => [name, say(pair)])) as Readonly<Record<string, string>> &
      Record<K, string>;
}
