/* Our engine, from `new Worker` to the first answer. */
import { ask, onProgress, startEngine } from "./assets/engine/engine.js";

export async function measure(request) {
  const began = performance.now();
  await startEngine();
  await ask(request);
  const first = performance.now() - began;
  return { first };
}

export const kept = () => new Promise((done) => onProgress((state) => state.kept && done()));

export async function timeEach(requests) {
  const times = [];
  for (const request of requests) {
    await ask(request);
    const began = performance.now();
    await ask(request);
    times.push(performance.now() - began);
  }
  return times;
}
