// Which packages come without types? Those that this room uses, with just what it uses.
declare module "tar-fs" {
  const tar: { extract(folder: string): NodeJS.WritableStream };
  export = tar;
}
