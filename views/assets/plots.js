// Takes a plot out with its data: an SVG that needs no style sheet, a PNG of it, or the data alone. Plain script; without
// it the data stand on the page as a table.
(() => {
  const inks = [
    "fill",
    "stroke",
    "stroke-width",
    "stroke-dasharray",
    "stroke-linejoin",
    "stroke-linecap",
    "opacity",
    "font-family",
    "font-size",
    "font-weight",
    "text-anchor",
  ];
  const offer = () => {
    for (const row of document.querySelectorAll("[data-take-out][hidden]")) row.hidden = false;
  };
  offer();
  document.addEventListener("htmx:after:swap", offer);
  document.addEventListener("htmx:sse:after:message", offer);

  const rowsOf = (figure) =>
    [...figure.querySelectorAll("tr")].map((row) => [...row.cells].map(({ textContent }) => textContent));
  const csvOf = (figure) =>
    rowsOf(figure)
      .map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(","))
      .join("\r\n");

  /** The drawing that is seen, or the wide one, with every colour written into it. */
  function standing(figure) {
    const shown = [...figure.querySelectorAll(":scope > svg")].find((one) => one.getClientRects().length > 0);
    const copy = shown.cloneNode(true);
    const [from, to] = [shown, copy].map((one) => [one, ...one.querySelectorAll("*")]);
    from.forEach((one, place) => {
      const style = getComputedStyle(one);
      for (const ink of inks) to[place].setAttribute(ink, style.getPropertyValue(ink));
      to[place].removeAttribute("class");
    });
    const [, , width, height] = copy.getAttribute("viewBox").split(" ");
    copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
    copy.setAttribute("viewBox", `-12 -12 ${Number(width) + 24} ${Number(height) + 24}`);
    copy.setAttribute("width", Number(width) + 24);
    copy.setAttribute("height", Number(height) + 24);
    const paper = document.createElementNS("http://www.w3.org/2000/svg", "rect");
    for (const [name, value] of Object.entries({ x: -12, y: -12, width: "100%", height: "100%" }))
      paper.setAttribute(name, value);
    paper.setAttribute("fill", getComputedStyle(document.body).backgroundColor);
    copy.querySelector("desc").after(paper);
    const data = document.createElementNS("http://www.w3.org/2000/svg", "metadata");
    data.textContent = csvOf(figure);
    paper.before(data);
    return new XMLSerializer().serializeToString(copy);
  }

  async function png(svg) {
    const picture = new Image();
    picture.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
    await picture.decode();
    const canvas = document.createElement("canvas");
    canvas.width = 2 * picture.naturalWidth;
    canvas.height = 2 * picture.naturalHeight;
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    return new Promise((resolve) => {
      canvas.toBlob(resolve, "image/png");
    });
  }

  document.addEventListener("click", async ({ target }) => {
    const button = target.closest?.("[data-take-out] [data-form]");
    if (!button) return;
    const { form } = button.dataset;
    const figure = button.closest("figure");
    const svg = standing(figure);
    const file =
      form === "CSV"
        ? new Blob([`\ufeff${csvOf(figure)}\r\n`], { type: "text/csv" })
        : form === "SVG"
          ? new Blob([svg], { type: "image/svg+xml" })
          : await png(svg);
    const link = document.createElement("a");
    link.href = URL.createObjectURL(file);
    link.download = `${figure.id}.${form.toLowerCase()}`;
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  });
})();
