// Calls functions of web/core as a phone does: a JSON list of {module, name, args} on stdin, their answers on stdout.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const core = process.argv[2];

async function called({ module, name, args }) {
  const found = (await import(pathToFileURL(path.join(core, module)).href))[name];
  try {
    return { value: (await found(...args.map(revived))) ?? null };
  } catch (fault) {
    return { fault: fault.message };
  }
}

/** Bytes come in as {hex}. */
function revived(value) {
  if (value?.hex !== undefined) return new Uint8Array(Buffer.from(value.hex, "hex"));
  return value;
}

const asked = JSON.parse(fs.readFileSync(0, "utf8"));
const answers = [];
for (const one of asked) answers.push(await called(one));
process.stdout.write(JSON.stringify(answers));
