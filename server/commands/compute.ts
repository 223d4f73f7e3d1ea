/** Not built yet; says so and fails. */
export async function run(_args: string[]): Promise<number> {
  console.error("underhook compute: not built yet.");
  return 70;
}
