// node build.mjs OUT SRC DIGESTS: checks, bundles, compiles and packs everything that a browser is served, into the folder OUT.
import fs from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { sha256, Shelf } from "./builder/pack.mjs";
import { bundled, checkTypes } from "./builder/pages.mjs";
import { compiledPython, tried } from "./builder/python.mjs";

const WEB = path.dirname(fileURLToPath(import.meta.url));
const MODULES = path.join(WEB, "node_modules");
const FONTS = path.join(MODULES, "@fontsource", "atkinson-hyperlegible-next", "files");
const FACES = ["latin-400", "latin-700", "latin-ext-400", "latin-ext-700"];
const PYTHON_PARTS = ["pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm"];

const read = (...parts) => fs.readFileSync(path.join(...parts));

/** The browser's Python, its library and the engine; returns the names that the worker is told. */
async function putPython(shelf, source) {
  const from = path.join(MODULES, "pyodide");
  const parts = PYTHON_PARTS.map((name) => [name, read(from, name)]);
  const home = `python.${sha256(Buffer.concat(parts.map(([, bytes]) => bytes))).slice(0, 16)}`; // it finds its parts by name
  for (const [name, bytes] of parts) await shelf.put(`${home}/${name}`, bytes);
  const start = read(WEB, "python-worker", "start.py").toString();
  const { library, engine } = await compiledPython(from, source, start);
  const libraryName = await shelf.putNamed("library.zip", library);
  await tried(from, path.join(shelf.folder, libraryName), { engine, start });
  return {
    PYTHON_HOME: home,
    PYTHON_LIBRARY: libraryName,
    ENGINE: await shelf.putNamed("engine.bin", engine),
    START: start,
    PYTHON_LOCK: pythonLock(from),
  };
}

/** What Pyodide wants to know of itself, without its list of packages: none is used. */
function pythonLock(from) {
  const { info } = JSON.parse(read(from, "pyodide-lock.json"));
  return JSON.stringify({ info, packages: {} });
}

async function putLook(shelf) {
  let look = read(WEB, "page", "look.css").toString();
  for (const face of FACES) {
    const bytes = read(FONTS, `atkinson-hyperlegible-next-${face}-normal.woff2`);
    look = look.replaceAll(`url("${face}")`, `url("${await shelf.putNamed(`${face}.woff2`, bytes)}")`);
  }
  return shelf.putNamed("look.css", look);
}

async function putPages(shelf, python, digests) {
  const scanner = await shelf.putNamed("scanner.wasm", read(MODULES, "zxing-wasm", "dist", "reader", "zxing_reader.wasm"));
  const worker = await shelf.putNamed("python-worker.js", await bundled(WEB, "python-worker/worker.ts", python));
  const scanning = await shelf.putNamed("scan-worker.js", await bundled(WEB, "scan-worker/worker.ts", { SCANNER: scanner }));
  const version = read(WEB, "..", "src", "backprobe", "__init__.py").toString().match(/__version__ = "(.+)"/)[1];
  const known = { PYTHON_WORKER: worker, SCAN_WORKER: scanning, VERSION: version, ...digests };
  return shelf.putNamed("page.js", await bundled(WEB, "page/main.tsx", known));
}

/** The page, and what a phone needs to take it for an app. */
async function putShell(shelf, { script, look }) {
  await shelf.put("icon.svg", read(WEB, "page", "icon.svg"));
  await shelf.put("app.webmanifest", read(WEB, "page", "app.webmanifest"));
  const page = read(WEB, "page", "index.html").toString().replace("page.js", script).replace("look.css", look);
  await shelf.put("index.html", page);
}

/** The desk: the same look on a wide page; the phone keeps none of it. */
async function putDesk(shelf, look) {
  const script = await shelf.putNamed("desk.js", await bundled(WEB, "desk/main.tsx"));
  const wide = await shelf.putNamed("desk.css", read(WEB, "desk", "desk.css"));
  const page = read(WEB, "desk", "desk.html").toString();
  await shelf.put("desk.html", page.replace("desk.js", script).replace("desk.css", wide).replace("look.css", look));
}

async function main(out, source, digests) {
  checkTypes(WEB);
  const shelf = new Shelf(out);
  const script = await putPages(shelf, await putPython(shelf, source), digests);
  const look = await putLook(shelf);
  await putShell(shelf, { script, look });
  const worker = { DIGEST: shelf.digest.slice(0, 16), FILES: Object.keys(shelf.files) };
  await shelf.put("service-worker.js", await bundled(WEB, "service-worker/worker.ts", worker));
  await putDesk(shelf, look);
  const listed = { digest: shelf.digest, files: shelf.files };
  fs.writeFileSync(path.join(out, "files.json"), `${JSON.stringify(listed, null, 1)}\n`);
  const sizes = Object.values(shelf.files).map((file) => file.br ?? file.bytes);
  console.log(`${sizes.length} files, ${(sizes.reduce((a, b) => a + b) / 1e6).toFixed(2)} MB to be loaded`);
}

try {
  await main(process.argv[2], process.argv[3], JSON.parse(process.argv[4]));
} catch (fault) {
  console.error(fault.message); // without the page-long source line that Node would add
  process.exitCode = 1;
}
