// Runs Python in Node as a browser would: node boot.mjs PYODIDE_FOLDER ENGINE_ZIP SCRIPT
// A request (a string) comes in on stdin; run(request) of the Python script answers with a string on stdout.
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [pyodideFolder, engineZip, script] = process.argv.slice(2);
const request = fs.readFileSync(0, "utf8"); // before booting, which takes stdin over
const { loadPyodide } = await import(pathToFileURL(path.join(pyodideFolder, "pyodide.mjs")).href);

async function answer() {
  const started = performance.now();
  const python = await loadPyodide({ indexURL: pyodideFolder + path.sep });
  console.error(`booted in ${Math.round(performance.now() - started)} ms`);
  python.unpackArchive(new Uint8Array(fs.readFileSync(engineZip)), "zip", { extractDir: "/engine" });
  python.runPython("import sys; sys.path.insert(0, '/engine')");
  const scope = python.toPy({ __name__: "engine_run" }); // not "__main__": the script is not to read stdin itself
  python.runPython(fs.readFileSync(script, "utf8"), { globals: scope });
  return scope.get("run")(request);
}

try {
  process.stdout.write(await answer());
} catch (error) {
  console.error(error.message); // Python's own traceback, without the page-long source line that Node would add
  process.exitCode = 1;
}
