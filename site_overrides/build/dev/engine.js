/* The page's side of the engine while the site is written: this machine's own Python answers at once. */

const READY = { step: "ready", loaded: 0, total: 0, kept: false };
const ASK = new URL("../../-/ask", import.meta.url);

export const startEngine = async () => {};
export const engineHeld = async () => ({ held: true, bytes: 0 });
export const forgetEngine = async () => {};

export async function ask(request) {
  const response = await fetch(ASK, { method: "POST", body: JSON.stringify(request) });
  if (!response.ok) throw new Error(`make dev answered ${response.status}`);
  return response.json();
}

export function onProgress(callback) {
  callback(READY);
  return () => {};
}
