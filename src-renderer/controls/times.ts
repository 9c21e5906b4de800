const DAY = 24 * 60 * 60 * 1000;

const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short' });
const dayAndYear = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });

function midnight(time: number): number {
  return new Date(time).setHours(0, 0, 0, 0);
}

/** When something was, as one says it: "today 14:05", "yesterday 09:12", "3 Mar 17:40", "3 Mar 2024". */
export function timeWords(time: number, now: number): string {
  const days = Math.round((midnight(now) - midnight(time)) / DAY);
  if (days <= 0) return `today ${clock.format(time)}`;
  if (days === 1) return `yesterday ${clock.format(time)}`;
  if (days < 200) return `${day.format(time)} ${clock.format(time)}`;
  return dayAndYear.format(time);
}
