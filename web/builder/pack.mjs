// Writes files under names that carry their digest, each with its brotli and gzip form beside it.
import crypto from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { promisify } from "node:util";
import zlib from "node:zlib";

const brotli = promisify(zlib.brotliCompress);
const gzip = promisify(zlib.gzip);
const LARGE = 2_000_000; // bytes from which the best brotli takes half a minute
const QUALITY = { large: 10, small: 11 };
const PACKED_ALREADY = /\.(woff2|png)$/;

export const sha256 = (bytes) => crypto.createHash("sha256").update(bytes).digest("hex");

/** `page.js` with its digest in it: `page.3f2a…c1.js`; equal names have equal bytes for ever. */
export function named(name, bytes) {
  const { dir, name: stem, ext } = path.posix.parse(name);
  return path.posix.join(dir, `${stem}.${sha256(bytes).slice(0, 16)}${ext}`);
}

async function forms(name, bytes) {
  if (PACKED_ALREADY.test(name)) return {};
  const quality = bytes.length > LARGE ? QUALITY.large : QUALITY.small;
  const params = { [zlib.constants.BROTLI_PARAM_QUALITY]: quality, [zlib.constants.BROTLI_PARAM_LGWIN]: 24 };
  const [br, gz] = await Promise.all([brotli(bytes, { params }), gzip(bytes, { level: 9 })]);
  return { br, gz };
}

/** A folder that remembers what was put into it. */
export class Shelf {
  constructor(folder) {
    this.folder = folder;
    this.files = {};
  }

  async put(name, content) {
    const bytes = Buffer.from(content);
    const target = path.join(this.folder, name);
    fs.mkdirSync(path.dirname(target), { recursive: true });
    fs.writeFileSync(target, bytes);
    const packed = await forms(name, bytes);
    for (const [ending, data] of Object.entries(packed)) fs.writeFileSync(`${target}.${ending}`, data);
    this.files[name] = { sha256: sha256(bytes), bytes: bytes.length, br: packed.br?.length ?? null, gz: packed.gz?.length ?? null };
    return name;
  }

  /** Puts a file under a name that carries its digest; returns that name. */
  async putNamed(name, content) {
    return this.put(named(name, Buffer.from(content)), content);
  }

  /** One digest over everything on the shelf. */
  get digest() {
    const lines = Object.entries(this.files).map(([name, file]) => `${name} ${file.sha256}`);
    return sha256(lines.sort().join("\n"));
  }
}
