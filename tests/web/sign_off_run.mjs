// Signs as a phone does: on stdin {core, device, unsigned}; on stdout the public key, a proof, the signed entry, what cannot be done.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const { core, device, unsigned } = JSON.parse(fs.readFileSync(0, "utf8"));
const signing = await import(pathToFileURL(path.join(core, "sign-off.ts")).href);
const pair = await signing.newKeys();
const key = await signing.publicKeyOf(pair);
const proof = await signing.signatureOf(pair, `backprobe: the key of ${device}`);
const signature = await signing.signatureOf(pair, unsigned);
const raw = signing.withSignature(unsigned, signature);
const taken = await crypto.subtle.exportKey("pkcs8", pair.privateKey).catch((fault) => fault.name);
const twice = await Promise.resolve().then(() => signing.withSignature(raw, signature)).catch((fault) => fault.message);
process.stdout.write(JSON.stringify({ key, proof, raw, taken, twice }));
