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

// Of the codecs those that Python itself needs to start and to read its zips, and those of files that are opened here.
const CODECS = "__init__ aliases ascii cp437 cp1252 idna latin_1 punycode raw_unicode_escape unicode_escape utf_16 utf_16_be utf_16_le utf_32 utf_8 utf_8_sig";

// Every module is imported, and nothing that dataclasses write may be lacking: else a phone would start slowly, and nobody would see why.
const TRY = `
import importlib

lacking = []
def noted(text, scope, names):
    if text not in AHEAD["written"]:
        lacking.append(text)
    written(text, scope, names)

dataclasses.exec = noted
for name in AHEAD["modules"]:
    importlib.import_module(name)
if lacking:
    raise RuntimeError("not compiled ahead: " + lacking[0])
len(AHEAD["modules"])
`;

const COMPILE = `
import ast
import dataclasses
import importlib._bootstrap_external as bootstrap
import importlib.util
import io
import json
import marshal
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


def named(tree):
    """Classes are compiled without their docstrings; of one that has none dataclasses make one up, which takes long."""
    for node in ast.walk(tree):
        if isinstance(node, ast.ClassDef) and node.decorator_list:
            node.body.insert(0, ast.Assign([ast.Name("__doc__", ast.Store())], ast.Constant(node.name)))
    return ast.fix_missing_locations(tree)


def compiled(text, where):
    return marshal.dumps(compile(text, where, "exec", dont_inherit=True, optimize=2))


def modules(sources):
    for path, text in sorted(json.loads(sources).items()):
        name = path.removesuffix(".py").replace("/", ".")
        yield name.removesuffix(".__init__"), (name.endswith(".__init__"), compiled(named(ast.parse(text)), "/engine/" + path))


def engine(sources, start):
    """The modules and what dataclasses write for them, which only importing them tells."""
    held = {"modules": dict(modules(sources)), "written": {}}
    with open("/engine.bin", "wb") as file:
        marshal.dump(held, file)
    scope = {}
    exec(start, scope)
    texts = {}

    def kept(text, scope, names):
        texts[text] = None
        exec(text, scope, names)

    dataclasses.exec = kept
    for name in held["modules"]:
        importlib.import_module(name)
    del dataclasses.exec
    held["written"] = {text: compiled(text, "<string>") for text in sorted(texts)}
    return marshal.dumps(held)
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

/** Bytes of the trimmed library, a zip of compiled modules, and of the engine, the file that `start` reads. */
export async function compiledPython(packageFolder, source, start) {
  const python = await loadPyodide({ indexURL: packageFolder + path.sep });
  const scope = python.toPy({});
  python.runPython(COMPILE, { globals: scope });
  const words = (text) => python.toPy(text.split(/\s+/).filter(Boolean));
  const library = python.toPy(new Uint8Array(fs.readFileSync(path.join(packageFolder, "python_stdlib.zip"))));
  return {
    library: scope.get("library")(library, words(LEFT_OUT), words(CODECS)).toJs(),
    engine: scope.get("engine")(JSON.stringify(engineSources(source)), start).toJs(),
  };
}

/** Starts Python as a phone will, with the trimmed library in `file`, and imports every module of the engine; throws where one is lacking. */
export async function tried(packageFolder, file, { engine, start }) {
  const lock = JSON.parse(fs.readFileSync(path.join(packageFolder, "pyodide-lock.json")));
  const python = await loadPyodide({
    indexURL: packageFolder + path.sep,
    stdLibURL: file,
    lockFileContents: JSON.stringify({ info: lock.info, packages: {} }),
  });
  python.FS.writeFile("/engine.bin", engine);
  return python.runPython(start + TRY);
}
