// A verdict as a shape and a word, the shape as src/backprobe/drawings/marks.py draws it.
import { useShared } from "../page/context.ts";
import type { Verdict } from "../page/judgement.ts";
import { named } from "../words/words.ts";

const SHAPES: Readonly<Record<Verdict, string>> = {
  holds: "M0 0h16v16h-16z",
  thin: "M0 0h16v16h-16zM2 2v12h12v-12zM2 2h3v12h-3z",
  fails: "M0 2.2h9.1l-5.1 13.8h-4zM12 0h4v13.8h-9.1z",
  open: "M0 0h6v2h-4v4h-2zM10 0h6v6h-2v-4h-4zM14 10h2v6h-6v-2h4zM0 10h2v4h4v2h-6z",
};

export function VerdictShape({ verdict }: { verdict: Verdict }) {
  return (
    <svg class="shape" viewBox="0 0 16 16" aria-hidden="true" focusable="false">
      <path d={SHAPES[verdict]} fill="currentColor" fill-rule={verdict === "thin" ? "evenodd" : "nonzero"} />
    </svg>
  );
}

export function VerdictMark({ verdict }: { verdict: Verdict }) {
  const { words } = useShared();
  return (
    <span class="verdict">
      <VerdictShape verdict={verdict} />
      {named(words, "verdict", verdict)}
    </span>
  );
}
