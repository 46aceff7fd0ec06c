// The stages that are written down as forms.
import type { Form } from "./forms/ask.ts";
import { HAND_OVER } from "./forms/hand-over.ts";
import { JOIN } from "./forms/join.ts";
import { MOUNT } from "./forms/mount.ts";
import { WALKROUND } from "./forms/walkround.ts";

export const FORMS = { walkround: WALKROUND, join: JOIN, mount: MOUNT, hand_over: HAND_OVER } as const satisfies Readonly<Record<string, Form>>;
export type FormName = keyof typeof FORMS;
