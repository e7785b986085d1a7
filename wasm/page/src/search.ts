/** Finds refrigerants as people write them. */
import { property, refrigerants, RimewiseError } from "rimewise";

const bare = (text: string) => text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toUpperCase().replace(/[^0-9A-Z]/g, "").replace(/^R(?=\d)/, "");

/** What people call a few of them, in both languages. */
const CALLED: Readonly<Record<string, string>> = {
  PROPANE: "R290",
  PROPANO: "R290",
  ISOBUTANE: "R600a",
  ISOBUTANO: "R600a",
  PROPYLENE: "R1270",
  PROPILENO: "R1270",
  ETHANE: "R170",
  ETANO: "R170",
  AMMONIA: "R717",
  AMONIACO: "R717",
  CO2: "R744",
  CARBONDIOXIDE: "R744",
  DIOXIDODECARBONO: "R744",
};

let all: readonly [name: string, bare: string][] | undefined;

/** The library's way of writing a designation or a name such as propane; nothing where it knows none. */
export function designation(text: string): string | undefined {
  if (text.trim() === "" || text.length > 60) return undefined;
  try {
    return property({ refrigerant: text.trim() }).designation;
  } catch (error) {
    if (error instanceof RimewiseError) return undefined;
    throw error;
  }
}

/** The refrigerants that a text can mean, the closest first. */
export function matches(text: string, most = 8): string[] {
  const wanted = bare(text);
  if (wanted === "") return [];
  all ??= refrigerants().map((name) => [name, bare(name)] as const);
  const exact = designation(text);
  const known = all;
  const called = Object.entries(CALLED)
    .filter(([name, meant]) => wanted.length >= 3 && name.startsWith(wanted) && known.some(([other]) => other === meant))
    .map(([, meant]) => meant);
  const starting = all.filter(([, name]) => name.startsWith(wanted));
  const holding = all.filter(([, name]) => !name.startsWith(wanted) && name.includes(wanted));
  const found = [...starting, ...holding].map(([name]) => name);
  return [...new Set([...(exact === undefined ? [] : [exact]), ...called, ...found])].slice(0, most);
}
