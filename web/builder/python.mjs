// The Python that runs in the browser: its library and the engine, compiled ahead with that same Python.
import fs from "node:fs";
import path from "node:path";
import { loadPyodide } from "pyodide";

const BELOW = ["job", "tongues", "stages", "drawings", "formats", "inference", "limits", "physics", "evidence"];
const TOP = ["__init__.py", "findings.py", "errors.py"];

// What the engine never imports: networks, windows, tests, packaging, other databases and other people's formats.
const LEFT_OUT = `
  _pydatetime _pydecimal _pyio _pyrepl antigravity argparse bdb cProfile cmd code compileall configparser ctypes curses dbm
  distutils doctest email ensurepip ftplib getopt http idlelib imaplib ipaddress lib2to3 mailbox
  multiprocessing nntplib optparse pdb pickletools plistlib poplib profile pstats pydoc pydoc_data rlcompleter shelve smtplib
  socketserver sqlite3 sysconfig tabnanny tarfile test this tkinter trace turtle unittest urllib venv wave webbrowser
  wsgiref xml xmlrpc zipapp
`;

// Texts come in decoded: of the codecs only those that Python itself needs to start and to read its zips.
const CODECS = "__init__ aliases ascii cp437 idna latin_1 punycode raw_unicode_escape unicode_escape utf_8 utf_8_sig";

const TRY = `
import sys
sys.path.insert(0, "/engine.zip")
import importlib
import zipfile

with zipfile.ZipFile("/engine.zip") as archive:
    names = [name.removesuffix(".pyc").replace("/", ".") for name in archive.namelist() if name.endswith(".pyc")]
for name in names:
    importlib.import_module(name.removesuffix(".__init__"))
len(names)
`;

const COMPILE = `
import importlib._bootstrap_external as bootstrap
import importlib.util
import io
import json
import zipfile

DAY = (2026, 1, 1, 0, 0, 0)  # so that the same sources give the same bytes


def add(archive, name, data, where):
    if name.endswith(".py"):
        code = compile(data, where + name, "exec", dont_inherit=True, optimize=2)
        data = bootstrap._code_to_hash_pyc(code, importlib.util.source_hash(data), False)
        name += "c"
    archive.writestr(zipfile.ZipInfo(name, DAY), data)


def packed(files, where):
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_STORED) as archive:  # stored: brotli does better on the whole
        for name, data in files:
            add(archive, name, data, where)
    return made.getvalue()


def is_kept(name, left_out, codecs):
    room, _, module = name.partition("/")
    if room == "encodings":
        return module.removesuffix(".py") in codecs
    return room.removesuffix(".py") not in left_out


def library(source, left_out, codecs):
    with zipfile.ZipFile(io.BytesIO(source)) as archive:
        names = sorted(name for name in archive.namelist() if not name.endswith("/"))
        kept = [name for name in names if is_kept(name, left_out, codecs)]
        return packed([(name, archive.read(name)) for name in kept], "/lib/python.zip/")


def engine(sources):
    return packed([(name, text.encode()) for name, text in sorted(json.loads(sources).items())], "/engine.zip/")
`;

function* pythonFiles(folder) {
  for (const entry of fs.readdirSync(folder, { withFileTypes: true })) {
    const found = path.join(folder, entry.name);
    if (entry.isDirectory()) yield* pythonFiles(found);
    else if (entry.name.endsWith(".py")) yield found;
  }
}

/** The engine's sources by their path in the zip. */
export function engineSources(source) {
  const home = path.join(source, "backprobe");
  const files = [...TOP.map((name) => path.join(home, name)), ...BELOW.flatMap((room) => [...pythonFiles(path.join(home, room))])];
  return Object.fromEntries(files.map((file) => [path.relative(source, file).split(path.sep).join("/"), fs.readFileSync(file, "utf8")]));
}

/** Bytes of the trimmed library and of the engine, each a zip of compiled modules. */
export async function compiledPython(packageFolder, source) {
  const python = await loadPyodide({ indexURL: packageFolder + path.sep });
  const scope = python.toPy({});
  python.runPython(COMPILE, { globals: scope });
  const words = (text) => python.toPy(text.split(/\s+/).filter(Boolean));
  const library = python.toPy(new Uint8Array(fs.readFileSync(path.join(packageFolder, "python_stdlib.zip"))));
  return {
    library: scope.get("library")(library, words(LEFT_OUT), words(CODECS)).toJs(),
    engine: scope.get("engine")(JSON.stringify(engineSources(source))).toJs(),
  };
}

/** Starts Python as a phone will, with the trimmed library in `file`, and imports every module of the engine; throws where one is lacking. */
export async function tried(packageFolder, file, engine) {
  const lock = JSON.parse(fs.readFileSync(path.join(packageFolder, "pyodide-lock.json")));
  const python = await loadPyodide({
    indexURL: packageFolder + path.sep,
    stdLibURL: file,
    lockFileContents: JSON.stringify({ info: lock.info, packages: {} }),
  });
  python.FS.writeFile("/engine.zip", engine);
  return python.runPython(TRY);
}
