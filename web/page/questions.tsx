// Questions of a form that are due, each with the answer that stands in the sheet.
import { valueIn, type Value } from "../core/sheet.ts";
import { Question } from "../parts/form.tsx";
import { useShared } from "./context.ts";
import { inUnits, isDue, tableOf, type Ask, type Which } from "./forms/ask.ts";
import type { Change } from "./use-sheet.ts";

interface QuestionsProps {
  readonly asks: readonly Ask[];
  readonly which: Which | null;
  readonly sheet: string;
  readonly expected?: Readonly<Record<string, string>>; // by key: what the day's sheet says
  readonly onAnswer: (changes: readonly Change[]) => void;
}

export function Questions({ asks, which, sheet, expected = {}, onAnswer }: QuestionsProps) {
  const value = (ask: { table: string; key: string }): Value | null => valueIn(sheet, tableOf(ask as Ask, which), ask.key);
  const said = (ask: Ask, given: Value | null): Change => ({ table: tableOf(ask, which), key: ask.key, value: given });
  const { units } = useShared();
  const asked = asks.map((ask) => inUnits(ask, units, sheet)).filter((ask) => !ask.when || isDue(ask.when, value({ table: ask.when.table ?? ask.table, key: ask.when.key })));
  return (
    <>
      {asked.map((ask) => (
        <Question
          key={`${ask.table}.${ask.key}`}
          ask={ask}
          value={value(ask)}
          expected={expected[ask.key] ?? null}
          onAnswer={(given, how) => onAnswer([said(ask, given), ...(how === undefined ? [] : [{ table: tableOf(ask, which), key: `${ask.key}_read`, value: given === null ? null : how }])])}
        />
      ))}
    </>
  );
}
