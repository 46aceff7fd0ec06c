// Several answers by one touch: what they are stands above the button.
import { useShared } from "../page/context.ts";
import { nameOf, type Offer } from "../page/forms/offer.ts";
import { formWordsIn } from "../words/form-words.ts";
import { saidOf } from "./said.tsx";

export function AtOnce({ offer, onTake }: { offer: Offer; onTake: () => void }) {
  const { language, units } = useShared();
  const words = formWordsIn(language);
  return (
    <div class="at-once">
      <dl class="given">
        {offer.given.map(({ ask, value, which }) => (
          <div key={nameOf(ask, which)}>
            <dt>{words(ask.word)}</dt>
            <dd>{saidOf(ask, value, { words, units })}</dd>
          </div>
        ))}
      </dl>
      <button type="button" class="wide" onClick={onTake}>
        {words(offer.word, { vehicle: offer.from ?? "" })}
      </button>
    </div>
  );
}
