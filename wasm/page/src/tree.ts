/** Values of a tree by their path. */

export type Tree = Record<string, unknown>;

/** Puts a value at a path. */
export function put(tree: Tree, path: string, value: unknown): void {
  const steps = path.split(".");
  const last = steps.pop() as string;
  let at = tree;
  for (const step of steps) {
    at = (at[step] ??= {}) as Tree;
  }
  at[last] = value;
}

/** Reads a value at a path, or undefined. */
export function get(tree: unknown, path: string): unknown {
  return path.split(".").reduce<unknown>((at, step) => {
    if (at === null || typeof at !== "object" || !Object.hasOwn(at, step)) return undefined;
    return (at as Tree)[step];
  }, tree);
}

/** Takes a value out at a path; true where there was one. */
export function take(tree: unknown, path: string): boolean {
  const steps = path.split(".");
  const last = steps.pop() as string;
  const parent = steps.length === 0 ? tree : get(tree, steps.join("."));
  if (parent === null || typeof parent !== "object" || !Object.hasOwn(parent, last)) return false;
  delete (parent as Tree)[last];
  return true;
}
