// Two people sign: whoever takes the vehicle back draws, whoever did the work signs with the phone's key. One touch keeps both.
import { useEffect, useState } from "preact/hooks";
import { publicKeyOf, signedIn } from "../core/sign-off.ts";
import { text } from "../core/standing.ts";
import { Picture } from "../parts/photos.tsx";
import { asPhoto, Pad, SHOWS, type Drawing } from "../parts/signature.tsx";
import { textOf } from "../store/blobs.ts";
import { keysHere } from "../store/keys.ts";
import { setting } from "../store/settings.ts";
import { formWordsIn } from "../words/form-words.ts";
import { useKeeping, useShared } from "./context.ts";
import { endWord } from "./ending.tsx";
import type { Judgement } from "./judgement.ts";
import { fingerprintOf, NotSigned, signedOff } from "./sign.ts";
import type { OpenJob } from "./use-job.ts";

interface Hand {
  readonly pair: CryptoKeyPair | null; // null where this browser cannot sign
  readonly fingerprint: string;
  readonly name: string;
}

export function SignHere({ id, open, judged }: { id: string; open: OpenJob; judged: Judgement | null }) {
  const signed = judged?.signed ?? null;
  const isOver = signed !== null && signed.late === 0 && signed.holds !== false;
  const { language } = useShared();
  const asked = formWordsIn(language);
  return (
    <>
      {signed && <SignedOff open={open} judged={judged as Judgement} />}
      {signed && !isOver && !open.behind && (
        <p class="fault" role="alert">
          {signed.late === 1 ? asked("signed_late_one") : asked("signed_late_many", { count: String(signed.late) })}
        </p>
      )}
      {!isOver && <Signing id={id} open={open} judged={judged} />}
    </>
  );
}

function Signing({ id, open, judged }: { id: string; open: OpenJob; judged: Judgement | null }) {
  const { language, setFault } = useShared();
  const asked = formWordsIn(language);
  const keeping = useKeeping();
  const hand = useHand();
  const [drawing, setDrawing] = useState<Drawing | null>(null);
  const [again, setAgain] = useState(false);
  const [busy, setBusy] = useState(false);
  const before = open.said.findLast((one) => one.kind === "photo" && text(one.body, "shows") === SHOWS);
  const isKept = before !== undefined && !again;
  const canEnd = judged !== null && !open.behind && judged.ends.hindered?.length === 0;
  const work = async (withKey: CryptoKeyPair | null): Promise<void> => {
    const photo = drawing ? await asPhoto(drawing) : null;
    const [fresh, blobs] = photo ? [[photo.entry], [photo.blob]] : [[], []];
    if (withKey) await open.take(() => signedOff(id, withKey, fresh, blobs));
    else if (photo) await open.write(fresh, blobs);
  };
  const finish = async (withKey: CryptoKeyPair | null): Promise<void> => {
    setBusy(true);
    let why: string | null = null;
    const done = await keeping(() =>
      work(withKey).catch((fault: unknown) => {
        if (!(fault instanceof NotSigned)) throw fault;
        why = fault.message;
      }),
    );
    if (why !== null) setFault(asked("not_signed", { why }));
    else if (done) setAgain(false);
    setBusy(false);
  };
  return (
    <>
      <section class="signature">
        <h2>{asked("signature")}</h2>
        {isKept ? (
          <>
            <Picture sha256={text(before.body, "sha256")} alt={asked("signature")} />
            <button type="button" onClick={() => setAgain(true)}>
              {asked("signature_another")}
            </button>
          </>
        ) : (
          <>
            <p class="small">{asked("signature_say")}</p>
            <Pad onDrawn={(made) => setDrawing(() => made)} />
          </>
        )}
      </section>
      <section class="signs">
        <h2>{asked("signs")}</h2>
        {hand && (hand.pair ? <WithKey hand={hand} /> : <p class="notice">{asked("no_key")}</p>)}
        {hand?.pair && (
          <>
            <button type="button" class="main wide" disabled={busy || !canEnd || (drawing === null && !isKept)} onClick={() => void finish(hand.pair)}>
              {asked(busy ? "signing" : "sign_finish")}
            </button>
            {!canEnd && judged?.ends.hindered === null && <p class="small">{asked("end_first")}</p>}
            {canEnd && drawing === null && !isKept && (
              <button type="button" class="wide plain" disabled={busy} onClick={() => void finish(hand.pair)}>
                {asked("sign_alone")}
              </button>
            )}
          </>
        )}
        {hand && !hand.pair && (
          <button type="button" class="main wide" disabled={busy || drawing === null} onClick={() => void finish(null)}>
            {asked("finish_unsigned")}
          </button>
        )}
      </section>
    </>
  );
}

function WithKey({ hand }: { hand: Hand }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  return (
    <>
      <p>{asked("signs_say", { name: hand.name })}</p>
      <p class="small key">{asked("key_is", { key: hand.fingerprint })}</p>
    </>
  );
}

/** The sign-off that counts, in words, with the drawing that it covers. */
function SignedOff({ open, judged }: { open: OpenJob; judged: Judgement }) {
  const { language } = useShared();
  const asked = formWordsIn(language);
  const { id, end, holds } = judged.signed ?? { id: "", end: "", holds: null };
  const entry = open.entries?.find((one) => one.id === id);
  const [who, setWho] = useState<{ name: string; key: string } | null>(null);
  useEffect(() => {
    if (entry) void signer(open, entry.raw).then(setWho);
  }, [id, entry === undefined]);
  const drawn = open.said.findLast((one) => one.kind === "photo" && text(one.body, "shows") === SHOWS);
  if (!entry) return null;
  const { at } = JSON.parse(entry.raw) as { at: string | null };
  const when = at === null ? "–" : new Intl.DateTimeFormat(language, { dateStyle: "long", timeStyle: "short" }).format(new Date(at));
  return (
    <section class="signature signed" aria-live="polite">
      <h2>{asked("signed_as", { end: endWord(end, asked), name: who?.name ?? "–", when })}</h2>
      {who && <p class="small key">{asked("key_is", { key: who.key })}</p>}
      {holds === null && <p class="notice">{asked("signed_unchecked")}</p>}
      {drawn && (
        <figure>
          <Picture sha256={text(drawn.body, "sha256")} alt={asked("signature")} />
          <figcaption>{asked("drawn_by")}</figcaption>
        </figure>
      )}
    </section>
  );
}

async function signer(open: OpenJob, raw: string): Promise<{ name: string; key: string }> {
  const { by } = JSON.parse(raw) as { by: string | null };
  const person = open.said.find((one) => one.id === by);
  const known = person ? await textOf(text(person.body, "sha256")) : null;
  const name = known === null ? "–" : ((JSON.parse(known) as { name?: string }).name ?? "–");
  return { name, key: await fingerprintOf(signedIn(raw)?.key ?? "") };
}

/** Whose phone it is and with which key it signs; null until it is known. */
function useHand(): Hand | null {
  const [hand, setHand] = useState<Hand | null>(null);
  useEffect(() => {
    void (async () => {
      const pair = await keysHere().catch(() => null);
      const enrolment = await setting("enrolment");
      setHand({ pair, fingerprint: pair ? await fingerprintOf(await publicKeyOf(pair)) : "", name: enrolment?.person.name ?? "" });
    })();
  }, []);
  return hand;
}
