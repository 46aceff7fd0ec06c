// What passes between a page and the worker in which the engine runs.

export interface Ask {
  readonly id: number;
  readonly door: "judge_journal" | "margin_bars" | "pictures" | "places" | "proof" | "sign_off" | "opened";
  readonly text: string;
  readonly bytes?: Uint8Array; // of a file that was opened
}

export type Told =
  | { readonly state: "ready"; readonly ms: number }
  | { readonly state: "failed"; readonly why: string }
  | { readonly state: "answer"; readonly id: number; readonly text: string; readonly ms: number }
  | { readonly state: "fault"; readonly id: number; readonly why: string };
