// A stage that is written down: its questions in order, what the engine finds of the answers beneath.
import { useEffect, useState } from "preact/hooks";
import { valueIn, type Value } from "../core/sheet.ts";
import { OtherSheets } from "../parts/other-sheets.tsx";
import { isAsked, MorePhotos } from "../parts/photos.tsx";
import { Pictures, type PictureName } from "../parts/pictures.tsx";
import { StageFindings } from "../parts/stage-findings.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { setting, type Settings } from "../store/settings.ts";
import { onSync } from "../sync/sync.ts";
import { formWordsIn } from "../words/form-words.ts";
import { named } from "../words/words.ts";
import { useKeeping, useShared } from "./context.ts";
import { FormSection } from "./form-section.tsx";
import type { Section } from "./forms/ask.ts";
import { FORMS, type FormName } from "./forms.ts";
import { Joints } from "./joints.tsx";
import { MountPlaces } from "./mount-places.tsx";
import { FoundDevices } from "./found-devices.tsx";
import { NextStage } from "./next-stage.tsx";
import { vehicleName } from "./today.tsx";
import { useAround } from "./use-around.ts";
import { useJob, type NewEntry } from "./use-job.ts";
import { useSheet, type Change } from "./use-sheet.ts";

const PICTURES_OF: Readonly<Record<FormName, readonly PictureName[]>> = { walkround: [], join: [], mount: [], hand_over: [] };

const PLACED = ["mount_", "join_mount", "join_route"]; // what the joints find of the place of the unit and of the way of its leads stands at the mount

export function FormPage({ id, name }: { id: string; name: FormName }) {
  const { words } = useShared();
  const form = FORMS[name];
  const open = useJob(id);
  const sheet = useSheet(id, form.sheet, open);
  const keeping = useKeeping();
  const around = useAround(open, sheet.text);
  const answer = (changes: readonly Change[], more: readonly NewEntry[] = []): void => void keeping(() => sheet.change(changes, more));
  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${named(words, "stage", form.stage)}` : words("loading")} back={{ name: "job", job: id }} />
      <main class="form">
        <Troubles />
        <Elsewhere id={id} sheet={sheet.text ?? ""} />
        <OtherSheets open={open} kind={form.sheet} sheet={sheet.text ?? ""} asks={form.sections.flatMap(({ asks }: Section) => asks)} />
        {around && name === "join" && <Joints open={open} around={around} onAnswer={answer} />}
        {around && name === "mount" && <MountPlaces id={id} open={open} around={around} job={sheet} />}
        {around && form.sections.map((section) => <FormSection key={section.title} section={section} open={open} around={around} onAnswer={answer} />)}
        {around && name === "walkround" && <FoundDevices sheet={around.sheet} onAnswer={answer} />}
        <MorePhotos shows={[...form.sections.flatMap(({ photos }: Section) => photos ?? []).filter((shows) => !isAsked(shows)), "other"]} open={open} />
        <Pictures open={open} names={PICTURES_OF[name]} />
        <h2>{words("findings")}</h2>
        {open.judgement?.ok === false && (
          <p class="fault">
            {words("refused_job", { why: open.judgement.error })}
          </p>
        )}
        <StageFindings open={open} stage={form.stage} {...(name === "mount" ? { also: PLACED } : name === "join" ? { without: PLACED } : {})} />
        <NextStage open={open} id={id} stage={name} />
      </main>
    </>
  );
}

/** As the server compares serial numbers: without spaces, in capitals. */
const plainSerial = (typed: Value | null): string => String(typed ?? "").replace(/\s/g, "").toUpperCase();

/** Whether the unit is in another vehicle already, by the day's list: said at once, with no line too. */
function Elsewhere({ id, sheet }: { id: string; sheet: string }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  const [serials, setSerials] = useState<Settings["serials"]>([]);
  useEffect(() => {
    const read = async (): Promise<void> => setSerials((await setting("serials")) ?? []);
    void read();
    return onSync((_, changed) => changed && void read());
  }, []);
  const serial = plainSerial(valueIn(sheet, { name: "unit" }, "serial"));
  const held = serials.find((one) => plainSerial(one.serial) === serial && one.job !== id);
  if (!held) return null;
  return (
    <p class="fault" role="alert">
      {words("serial_elsewhere", { vehicle: held.vehicle ?? held.job })}
    </p>
  );
}
