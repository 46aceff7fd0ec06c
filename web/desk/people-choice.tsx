// Some of the crew, as boxes to be ticked.
import type { Person } from "./api.ts";
import { useDesk } from "./context.ts";

interface Props {
  readonly legend: string;
  readonly people: readonly Person[];
  readonly chosen: readonly string[];
  readonly onChange: (chosen: readonly string[]) => void;
}

export function PeopleChoice({ legend, people, chosen, onChange }: Props) {
  const { words } = useDesk();
  const turn = (id: string, on: boolean): void => onChange(on ? [...chosen, id] : chosen.filter((one) => one !== id));
  return (
    <fieldset class="crew">
      <legend>{legend}</legend>
      {people.length === 0 && <p class="say">{words("people_none")}</p>}
      {people.map((person) => (
        <label key={person.id}>
          <input type="checkbox" checked={chosen.includes(person.id)} onChange={(event) => turn(person.id, event.currentTarget.checked)} />
          {person.name}
        </label>
      ))}
    </fieldset>
  );
}
