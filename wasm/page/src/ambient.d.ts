/** The unpacker is a file of the package without types of its own. */
declare module "*/rimewise/unpack.js" {
  export function unpack(input: Uint8Array): Uint8Array<ArrayBuffer>;
}
