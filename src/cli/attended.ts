/** Longest time between two looks at what the person does, ms. */
const LOOK_UP = 50;

/** The result of steps taken in this process; the terminal hears Ctrl-C between them. */
export async function attended<T>(steps: Generator<unknown, T, undefined>): Promise<T> {
  let looked = performance.now();
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    if (performance.now() - looked < LOOK_UP) continue;
    await new Promise(setImmediate);
    looked = performance.now();
  }
}
