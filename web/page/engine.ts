// The engine as a page asks it: started once, in a worker; of several questions of one asker only the newest is answered.
import type { Ask, Told } from "../core/engine-words.ts";

declare const PYTHON_WORKER: string;

export type EngineState = { readonly name: "starting" | "ready" } | { readonly name: "failed"; readonly why: string };

interface Waiting {
  readonly ask: Ask;
  readonly done: (text: string | null) => void;
}

const INITIAL: EngineState = { name: "starting" };

export class Engine {
  state: EngineState = INITIAL;
  private readonly worker: Worker;
  private readonly listeners = new Set<() => void>();
  private asked: Waiting | null = null; // what the worker has
  private readonly queue = new Map<string, Waiting>(); // the newest of each asker that it has not
  private last = 0;

  constructor() {
    this.worker = new Worker(new URL(PYTHON_WORKER, document.baseURI), { type: "module" });
    this.worker.onmessage = ({ data }: MessageEvent<Told>) => this.told(data);
    this.worker.onerror = (event) => this.become({ name: "failed", why: event.message || "worker" });
  }

  /** Calls `listener` whenever the state changes; returns how to stop. */
  onState(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** The door's answer; null where a newer question of the same asker came first, or none can be had. */
  ask(door: Ask["door"], text: string, asker: string = door, bytes?: Uint8Array): Promise<string | null> {
    if (this.state.name === "failed") return Promise.resolve(null);
    return new Promise((done) => {
      this.queue.get(asker)?.done(null);
      this.last += 1;
      this.queue.set(asker, { ask: { id: this.last, door, text, ...(bytes ? { bytes } : {}) }, done });
      this.send();
    });
  }

  private send(): void {
    const first = this.asked === null ? [...this.queue].at(0) : undefined;
    if (!first) return;
    this.queue.delete(first[0]);
    this.asked = first[1];
    this.worker.postMessage(first[1].ask);
  }

  private told(told: Told): void {
    if (told.state === "ready") return this.ready(told.ms);
    if (told.state === "failed") return this.become({ name: "failed", why: told.why.trim().split("\n").at(-1) ?? "" });
    if (told.id !== this.asked?.ask.id) return;
    const { done } = this.asked;
    this.asked = null;
    if (told.state === "answer") performance.measure("backprobe-judged", { start: performance.now() - told.ms, duration: told.ms });
    done(told.state === "answer" ? told.text : null);
    this.send();
  }

  private ready(ms: number): void {
    performance.measure("backprobe-engine", { start: Math.max(0, performance.now() - ms), duration: ms });
    this.become({ name: "ready" });
  }

  private become(state: EngineState): void {
    this.state = state;
    if (state.name === "failed") {
      for (const waiting of this.queue.values()) waiting.done(null);
      this.queue.clear();
      this.asked?.done(null);
      this.asked = null;
    }
    for (const listener of this.listeners) listener();
  }
}

let started: Engine | null = null;

/** The one engine of this page; starts it. */
export function engine(): Engine {
  started ??= new Engine();
  return started;
}
