// The end of a stage's page: what is still open on it, in one line, and one large button to the stage that is due next.
import { onwardFrom, undoneOn } from "../core/onward.ts";
import { named } from "../words/words.ts";
import { useShared } from "./context.ts";
import { addressOf, type StageName } from "./place.ts";
import type { OpenJob } from "./use-job.ts";

const SHOWN = 2; // of what is open: the findings above tell the rest

export function NextStage({ open, id, stage }: { open: OpenJob; id: string; stage: StageName }) {
  const { words } = useShared();
  const found = open.judgement?.ok ? open.judgement.findings : null;
  const next = onwardFrom(stage, found);
  const undone = undoneOn(stage, found ?? []);
  const more = undone.length - SHOWN;
  return (
    <nav class="onward" aria-label={words("onward")}>
      {undone.length > 0 && (
        <p class={open.behind ? "small behind" : "small"}>
          {words("open_here")} {undone.slice(0, SHOWN).join(", ")}
          {more > 0 && ` ${words("and_more", { count: more })}`}
        </p>
      )}
      {next ? (
        <a class="button main wide" href={addressOf({ name: "stage", job: id, stage: next })}>
          {words("on_to", { stage: named(words, "stage", next) })}
        </a>
      ) : (
        <a class="button wide" href={addressOf({ name: "job", job: id })}>
          {words("on_to_job")}
        </a>
      )}
    </nav>
  );
}
