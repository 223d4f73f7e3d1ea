/** A bench of three lines with a real event stream, so that the script is tried on what htmx really does. */
const heartbeatSeconds = 0.4;
export const livePage = (
  <>
    <div data-live data-heartbeat-seconds={heartbeatSeconds} hx-sse:connect="/live" hx-target="#reading">
      <p id="reading">0.0000 g</p>
    </div>
    <input type="text" id="entry" aria-label="entry" />
    <button type="button" id="take" data-key="t F9" data-needs-live>
      Take
    </button>
    <a href="#reading" id="link">
      To the reading
    </a>
    <button type="button" id="enter" data-key="Enter">
      Go on
    </button>
  </>
);
