/** ln n! by summing logarithms, kept. */
const logs = [0];
function logFactorial(n: number): number {
  for (let k = logs.length; k <= n; k++) logs.push(logs[k - 1]! + Math.log(k));
  return logs[n]!;
}

/** Probability of at most `hits` among `n` at share `p`. */
export function binomialAtMost(hits: number, n: number, p: number): number {
  if (hits < 0) return 0;
  if (p <= 0 || hits >= n) return 1;
  if (p >= 1) return 0;
  let sum = 0;
  for (let k = 0; k <= hits; k++)
    sum += Math.exp(
      logFactorial(n) - logFactorial(k) - logFactorial(n - k) + k * Math.log(p) + (n - k) * Math.log1p(-p),
    );
  return Math.min(1, sum);
}

/** Clopper–Pearson interval of a share seen `hits` times in `n`, at this confidence. */
export function binomialInterval(hits: number, n: number, confidence = 0.95): [number, number] {
  const tail = (1 - confidence) / 2;
  const solve = (above: (p: number) => boolean) => {
    let [low, high] = [0, 1];
    for (let i = 0; i < 50; i++) {
      const middle = (low + high) / 2;
      if (above(middle)) high = middle;
      else low = middle;
    }
    return (low + high) / 2;
  };
  return [
    hits === 0 ? 0 : solve((p) => 1 - binomialAtMost(hits - 1, n, p) > tail),
    hits === n ? 1 : solve((p) => binomialAtMost(hits, n, p) < tail),
  ];
}
