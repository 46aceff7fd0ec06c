// The TypeScript of pages and workers, checked and bundled.
import { spawnSync } from "node:child_process";
import path from "node:path";
import { build } from "esbuild";

const TARGET = "es2022";

const PROJECTS = [".", "service-worker"]; // a service worker knows other names than a page does

/** Stops the build where the types do not agree. */
export function checkTypes(web) {
  const compiler = path.join(web, "node_modules", "typescript", "bin", "tsc");
  for (const project of PROJECTS) {
    const done = spawnSync(process.execPath, [compiler, "--noEmit", "--project", path.join(web, project)], { encoding: "utf8" });
    if (done.status !== 0) throw new Error(`the types do not agree:\n${done.stdout}${done.stderr}`);
  }
}

/** The text of one bundle; `known` are names that the build fills in. */
export async function bundled(web, entry, known = {}) {
  const done = await build({
    entryPoints: [path.join(web, entry)],
    absWorkingDir: web,
    bundle: true,
    write: false,
    format: "esm",
    target: TARGET,
    minify: true,
    legalComments: "none",
    jsx: "automatic",
    jsxImportSource: "preact",
    logLevel: "silent",
    external: ["./pyodide.mjs"],
    define: Object.fromEntries(Object.entries(known).map(([name, value]) => [name, JSON.stringify(value)])),
  });
  return done.outputFiles[0].text;
}
