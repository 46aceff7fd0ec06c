// Who sits at the desk, where the server can be reached from other machines.
import { useState } from "preact/hooks";
import { login } from "./api.ts";
import { useDesk, useDoing } from "./context.ts";
import { Fault, Heading } from "./pieces.tsx";

export function Login({ onLoggedIn }: { onLoggedIn: () => void }) {
  const { words } = useDesk();
  const { busy, fault, run } = useDoing();
  const [name, setName] = useState("");
  const [password, setPassword] = useState("");
  return (
    <main class="narrow">
      <Heading title={words("login_title")} />
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void run(() => login(name, password)).then((done) => done && onLoggedIn());
        }}
      >
        <label>
          {words("login_name")}
          <input value={name} autoComplete="username" required onInput={(event) => setName(event.currentTarget.value)} />
        </label>
        <label>
          {words("login_password")}
          <input type="password" value={password} autoComplete="current-password" required onInput={(event) => setPassword(event.currentTarget.value)} />
        </label>
        <Fault text={fault} />
        <button type="submit" class="main" disabled={busy}>
          {words("login_do")}
        </button>
      </form>
    </main>
  );
}
