// Small pieces that the desk's pages share.
import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { useDesk, type Loaded } from "./context.ts";

/** The page's heading; it takes the focus when one arrives, so that a screen reader says where one is. */
export function Heading({ title, children }: { title: string; children?: ComponentChildren }) {
  const { words } = useDesk();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = `${title} – ${words("app")}`;
  }, [title]);
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <div class="heading">
      <h1 tabIndex={-1} ref={heading}>
        {title}
      </h1>
      {children}
    </div>
  );
}

/** A fault in words; nothing where there is none. */
export function Fault({ text }: { text: string | null }) {
  return text === null ? null : (
    <p class="fault" role="alert">
      {text}
    </p>
  );
}

/** Shows what was loaded; what went wrong, with another try; or that it is coming. */
export function Shown<T>({ of, children }: { of: Loaded<T>; children: (value: T) => ComponentChildren }) {
  const { words } = useDesk();
  if (of.fault !== null) {
    return (
      <div class="lines">
        <Fault text={words("not_reached", { why: of.fault })} />
        <button type="button" onClick={of.again}>
          {words("retry")}
        </button>
      </div>
    );
  }
  return of.value === null ? <p class="say">{words("loading")}</p> : <>{children(of.value)}</>;
}

/** A picture that the engine drew; it stands on paper in the dark, too. */
export function Picture({ svg }: { svg: string }) {
  return <div class="picture" dangerouslySetInnerHTML={{ __html: svg }} />;
}
