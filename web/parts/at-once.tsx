// Several answers by one touch: what they are stands above the button.
import type { Value } from "../core/sheet.ts";
import { useShared } from "../page/context.ts";
import type { Given, Offer } from "../page/forms/offer.ts";
import { formWordsIn, isFormWord, type FormWords } from "../words/form-words.ts";

export function AtOnce({ offer, onTake }: { offer: Offer; onTake: () => void }) {
  const { language } = useShared();
  const words = formWordsIn(language);
  return (
    <div class="at-once">
      <dl class="given">
        {offer.given.map((one) => (
          <div key={`${one.which?.value ?? ""}.${one.ask.table}.${one.ask.key}`}>
            <dt>{words(one.ask.word)}</dt>
            <dd>{saidOf(one, words)}</dd>
          </div>
        ))}
      </dl>
      <button type="button" class="wide" onClick={onTake}>
        {words(offer.word, { vehicle: offer.from ?? "" })}
      </button>
    </div>
  );
}

/** An answer in words, with its unit. */
function saidOf({ ask, value }: Given, words: FormWords): string {
  const unit = "unit" in ask && ask.unit ? ` ${ask.unit}` : "";
  return `${plain(value, words)}${unit}`;
}

function plain(value: Value, words: FormWords): string {
  if (typeof value === "boolean") return words(value ? "yes" : "no");
  if (typeof value === "string") return isFormWord(value) ? words(value) : value;
  return Array.isArray(value) ? value.join(", ") : String(value);
}
