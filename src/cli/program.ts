// Which program is this? Its version and the digest of everything that shapes a page, baked in when it is compiled.

declare const REEVEBOOK_VERSION: string | undefined;
declare const REEVEBOOK_DIGEST: string | undefined;

export const programVersion: string = typeof REEVEBOOK_VERSION === "string" ? REEVEBOOK_VERSION : "source";
export const programDigest: string = typeof REEVEBOOK_DIGEST === "string" ? REEVEBOOK_DIGEST : "source";
