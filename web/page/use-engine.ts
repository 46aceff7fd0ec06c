// Whether the engine is ready.
import { useEffect, useState } from "preact/hooks";
import { engine, type EngineState } from "./engine.ts";

export function useEngine(): EngineState {
  const [state, setState] = useState(() => engine().state);
  useEffect(() => engine().onState(() => setState(engine().state)), []);
  return state;
}
