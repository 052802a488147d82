"use strict";
// Shows one step at a time. Going on by one draws what the step adds: each line
// runs along, each arc swings from its centre, then the rest appears.
(() => {
  const find = id => document.getElementById(id);
  const frames = [...document.querySelectorAll(".step")];
  const caption = find("caption"), scrub = find("scrub"), count = find("count");
  const play = find("play"), pace = find("pace"), tools = find("tools");
  const still = matchMedia("(prefers-reduced-motion: reduce)");
  const space = "http://www.w3.org/2000/svg";
  let at = 0, playing = false, running = null, timer = 0;

  // How long an act takes, in milliseconds, from the pace of 1 to 5.
  const time = () => 4800 / 2 ** (Number(pace.value) - 1);

  function show(n, drawn) {
    stop();
    at = Math.min(Math.max(n, 0), frames.length - 1);
    frames.forEach((f, i) => f.classList.toggle("seen", i === at));
    caption.textContent = frames[at].querySelector("figcaption").textContent;
    scrub.value = at + 1;
    count.value = `${at + 1} ${count.dataset.of} ${frames.length}`;
    scrub.setAttribute("aria-valuetext", count.value);
    for (const [id, off] of [["first", at === 0], ["back", at === 0], ["next", at === frames.length - 1], ["last", at === frames.length - 1]])
      find(id).setAttribute("aria-disabled", off);
    if (drawn && !still.matches) draw(frames[at]); else linger();
  }

  // Ends a drawing at once, with all of it to be seen.
  function stop() {
    clearTimeout(timer);
    if (running) running.end();
    running = null;
  }

  // After an act, playing goes on when there has been as much time again.
  function linger() {
    if (!playing) return;
    if (at === frames.length - 1) return setPlaying(false);
    timer = setTimeout(() => show(at + 1, true), time());
  }

  function setPlaying(on) {
    playing = on;
    clearTimeout(timer);
    play.textContent = on ? play.dataset.pause : play.dataset.play;
    if (on) at === frames.length - 1 ? show(0, false) : show(at + 1, true);
  }

  // Draws what is new in a frame.
  function draw(frame) {
    const svg = frame.querySelector("svg"), hands = frame.dataset.tools.split(" ");
    const fresh = [...svg.querySelectorAll(".new")];
    const lines = fresh.filter(e => e.getTotalLength && e.hasAttribute("stroke-width")).map((e, i) => newLine(e, hands[i]));
    const rest = fresh.filter(e => !lines.some(l => l.element === e));
    const total = lines.reduce((sum, l) => sum + l.length, 0), whole = lines.length ? time() : time() / 3;
    const hand = lines.length && tools.checked ? newHand(svg) : null;
    let start = null, request = 0;
    const paint = share => {
      let run = Math.min(share / 0.85, 1) * total;
      for (const l of lines) {
        l.show(Math.min(run, l.length));
        if (hand && run > 0 && run < l.length) hand.hold(l, run);
        run = Math.max(run - l.length, 0);
      }
      for (const e of rest) e.style.opacity = lines.length ? Math.max(0, (share - 0.85) / 0.15) : share;
      if (hand && share >= 0.85) hand.put();
    };
    const tick = now => {
      start ??= now;
      const share = Math.min((now - start) / whole, 1);
      paint(share);
      if (share < 1) return request = requestAnimationFrame(tick);
      running.end();
      linger();
    };
    running = { end() {
      cancelAnimationFrame(request);
      lines.forEach(l => l.done());
      rest.forEach(e => e.style.opacity = "");
      if (hand) hand.put();
      running = null;
    } };
    paint(0);
    request = requestAnimationFrame(tick);
  }

  // A line that can be seen in part. Its own dashes are kept.
  function newLine(element, tool) {
    const length = element.getTotalLength();
    const dashes = (element.getAttribute("stroke-dasharray") || "").split(" ").map(Number).filter(Boolean);
    return {
      element, length, tool,
      show(run) {
        element.style.visibility = run > 0 ? "" : "hidden";
        element.style.fillOpacity = run < length ? 0 : "";
        element.style.strokeDasharray = pattern(dashes, run).concat(length + 1).join(" ");
      },
      done() {
        for (const name of ["visibility", "fillOpacity", "strokeDasharray"]) element.style[name] = "";
      },
    };
  }

  // Strokes and gaps as far as a line has been run, ending in a stroke.
  function pattern(dashes, run) {
    if (!dashes.length) return [run];
    const all = [];
    for (let i = 0, left = run; left > 0; i++) {
      all.push(Math.min(dashes[i % dashes.length], left));
      left -= all[i];
    }
    return all.length % 2 ? all : all.concat(0);
  }

  // The tools: for an arc the needle's point, the opening and the pencil's; for
  // a straight line the ruler's edge.
  function newHand(svg) {
    const g = svg.insertBefore(document.createElementNS(space, "g"), svg.querySelector("g")); // under the ink
    g.setAttribute("aria-hidden", "true");
    const make = (name, values) => {
      const e = g.appendChild(document.createElementNS(space, name));
      for (const [k, v] of Object.entries(values)) e.setAttribute(k, v);
      return e;
    };
    const edge = make("path", { fill: "#e6e6e6", stroke: "#767676", "stroke-width": 0.2 });
    const leg = make("line", { stroke: "#0072b2", "stroke-width": 0.35 });
    const needle = make("circle", { r: 0.7, fill: "#0072b2" });
    const pencil = make("circle", { r: 0.5, fill: "#0072b2" });
    return {
      hold(line, run) {
        const p = line.element.getPointAtLength(run);
        pencil.setAttribute("cx", p.x);
        pencil.setAttribute("cy", p.y);
        const arc = /,/.test(line.tool) ? line.tool.split(",") : null, ruled = line.tool === "ruler";
        for (const e of [leg, needle]) e.style.display = arc ? "" : "none";
        edge.style.display = ruled ? "" : "none";
        pencil.style.display = arc || ruled ? "" : "none";
        if (arc) {
          for (const [k, v] of [["x1", arc[0]], ["y1", arc[1]], ["x2", p.x], ["y2", p.y]]) leg.setAttribute(k, v);
          needle.setAttribute("cx", arc[0]);
          needle.setAttribute("cy", arc[1]);
        } else if (ruled) {
          edge.setAttribute("d", ruler(line.element.getPointAtLength(0), line.element.getPointAtLength(line.length)));
        }
      },
      put() { g.remove(); },
    };
  }

  // A strip 8 mm wide beside a line, 6 mm longer at both ends.
  function ruler(a, b) {
    const length = Math.hypot(b.x - a.x, b.y - a.y) || 1;
    const u = [(b.x - a.x) / length, (b.y - a.y) / length], n = [-u[1], u[0]];
    const place = (p, along, aside) => `${p.x + u[0] * along + n[0] * aside} ${p.y + u[1] * along + n[1] * aside}`;
    return `M${place(a, -6, 0.3)} L${place(b, 6, 0.3)} L${place(b, 6, 8.3)} L${place(a, -6, 8.3)} Z`;
  }

  // Going somewhere by hand ends what plays by itself.
  function go(n, drawn) {
    if (playing) setPlaying(false);
    if (n >= 0 && n < frames.length) show(n, drawn);
  }

  const acts = {
    first: () => go(0, false),
    back: () => go(at - 1, false),
    next: () => go(at + 1, true),
    last: () => go(frames.length - 1, false),
    play: () => playing ? setPlaying(false) : setPlaying(true),
  };
  for (const id in acts) find(id).addEventListener("click", acts[id]);
  scrub.addEventListener("input", () => go(Number(scrub.value) - 1, false));

  const keys = { ArrowRight: "next", PageDown: "next", ArrowLeft: "back", PageUp: "back", Home: "first", End: "last", " ": "next" };
  addEventListener("keydown", e => {
    const own = e.target.closest("input") || e.key === " " && e.target.closest("button");
    if (own || e.ctrlKey || e.altKey || e.metaKey || !(e.key in keys)) return;
    e.preventDefault();
    acts[e.key === " " && e.shiftKey ? "back" : keys[e.key]]();
  });

  // A swipe to the left goes on, one to the right goes back.
  const stage = find("stage");
  let from = null;
  stage.addEventListener("pointerdown", e => { if (e.isPrimary && e.pointerType !== "mouse") from = [e.clientX, e.clientY]; });
  stage.addEventListener("pointercancel", () => from = null);
  stage.addEventListener("pointerup", e => {
    if (!from) return;
    const dx = e.clientX - from[0], dy = e.clientY - from[1];
    from = null;
    if (Math.abs(dx) > 40 && Math.abs(dx) > 2 * Math.abs(dy)) acts[dx < 0 ? "next" : "back"]();
  });

  addEventListener("beforeprint", stop);
  document.documentElement.classList.add("plays");
  show(0, false);
})();
