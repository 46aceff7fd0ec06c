// A sheet over the page; the browser's own dialog keeps the focus inside and gives it back.
import type { ComponentChildren } from "preact";
import { useEffect, useId, useRef } from "preact/hooks";
import { useShared } from "../page/context.ts";

export function Dialog({ title, onClose, children }: { title: string; onClose: () => void; children: ComponentChildren }) {
  const { words } = useShared();
  const sheet = useRef<HTMLDialogElement>(null);
  const heading = useId();
  useEffect(() => sheet.current?.showModal(), []);
  return (
    <dialog ref={sheet} aria-labelledby={heading} onClose={onClose}>
      <div class="sheet-head">
        <h2 id={heading}>{title}</h2>
        <button type="button" class="plain" onClick={() => sheet.current?.close()}>
          {words("close")}
        </button>
      </div>
      {children}
    </dialog>
  );
}
