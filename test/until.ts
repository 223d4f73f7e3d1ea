/** Waits until a condition holds; fails with what it waited for. Far longer than any honest wait on two cores. */
export async function until(holds: () => boolean, what: string, withinMs = 15_000): Promise<void> {
  const end = Date.now() + withinMs;
  while (!holds()) {
    if (Date.now() > end) throw new Error(`Waited ${withinMs} ms in vain for ${what}.`);
    await new Promise((resolve) => setTimeout(resolve, 10));
  }
}
