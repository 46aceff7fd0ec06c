// The head of every page: the way back, where one is, and what was not sent yet.
import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { addressOf, type Place } from "../page/place.ts";
import { useShared } from "../page/context.ts";
import type { Words } from "../words/words.ts";
import { onSync, type SyncState } from "../sync/sync.ts";

const CLOCK_OUT_MIN = 2; // less can be the way of the answer

export function useSync(): SyncState {
  const [state, setState] = useState<SyncState>({ line: "unknown", unsent: 0, files: 0, clock_out_min: 0 });
  useEffect(() => onSync(setState), []);
  return state;
}

export function Unsent() {
  const { words } = useShared();
  const { unsent, files } = useSync();
  const text = unsent > 0 ? counted(words, "unsent", unsent) : files > 0 ? counted(words, "files", files) : words("unsent_none");
  return (
    <p class={unsent + files === 0 ? "unsent" : "unsent waiting"} role="status" data-unsent={unsent}>
      {text}
    </p>
  );
}

function counted(words: Words, of: "unsent" | "files", count: number): string {
  return count === 1 ? words(`${of}_one`) : words(`${of}_many`, { count });
}

/** The head; the title takes the focus when one arrives, so that a screen reader says where one is. */
export function Top({ title, back, children }: { title: string; back?: Place; children?: ComponentChildren }) {
  const { words } = useShared();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} – ${words("app")}`;
  }, [title]);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <header class="top">
      {back && (
        <a class="back" href={addressOf(back)} aria-label={words("back")}>
          <svg viewBox="0 0 24 24" aria-hidden="true" focusable="false">
            <path d="M15 4 7 12l8 8" fill="none" stroke="currentColor" stroke-width="2.5" />
          </svg>
        </a>
      )}
      <h1 tabIndex={-1} ref={heading}>
        {title}
      </h1>
      <Unsent />
      {children}
    </header>
  );
}

/** What went wrong with keeping, with the line, or with the phone itself. */
export function Troubles() {
  const { words, fault } = useShared();
  const { line, clock_out_min } = useSync();
  return (
    <div class="troubles">
      {fault && (
        <p class="fault" role="alert">
          {fault}
        </p>
      )}
      {line === "none" && <p class="notice">{words("line_none")}</p>}
      {Math.abs(clock_out_min) >= CLOCK_OUT_MIN && (
        <p class="notice">{words(clock_out_min > 0 ? "clock_ahead" : "clock_behind", { minutes: Math.abs(clock_out_min) })}</p>
      )}
      {line === "withdrawn" && <p class="fault">{words("line_withdrawn")}</p>}
    </div>
  );
}
