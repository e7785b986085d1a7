/** The bar that never leaves the screen: the compressor, the verdict, superheat and subcooling, the next step. */
import { app } from "./app.js";
import { byId, write } from "./dom.js";
import { scaleOf } from "./figures.js";
import { currentCard, showStep } from "./guide.js";
import { compressorOf, verdictOf } from "./report.js";
import { t } from "./text.js";
import { fromContract, show, unitName } from "./units.js";
import { goView } from "./views.js";
import { alarmTexts, standing } from "./view.js";
import { COMPRESSOR } from "./words.js";

function put(id: string, text: string): void {
  write(byId(id), text);
}

function figureOf(name: "superheat_k" | "compressor_superheat_k" | "subcooling_k"): string | undefined {
  const value = app.report?.cycle[name] ?? null;
  if (value === null) return undefined;
  const scale = scaleOf(name, app.units);
  return `${show(fromContract(value.value, scale, 0), scale)} ${unitName(scale)}`;
}

export function showBar(): void {
  const said = standing();
  byId("bar").dataset["tone"] = said.tone;
  put("strip", said.title);
  const code = app.report === undefined ? undefined : verdictOf(app.report);
  byId("strip").dataset["level"] = code?.level ?? "";
  byId("strip").dataset["name"] = code?.name ?? "";
  const compressor = app.report === undefined ? undefined : compressorOf(app.report);
  byId("bar-compressor").dataset["state"] = compressor?.state ?? "open";
  put("bar-compressor-state", compressor === undefined ? "–" : (COMPRESSOR[compressor.state] ?? compressor.state));
  const own = figureOf("superheat_k");
  put("bar-sh-name", t(own === undefined && figureOf("compressor_superheat_k") !== undefined ? "sh_compressor" : "sh"));
  put("bar-sh", own ?? figureOf("compressor_superheat_k") ?? "–");
  put("bar-sc", figureOf("subcooling_k") ?? "–");
  put("bar-alarm", app.report === undefined ? "" : alarmTexts(app.report).join(" · "));
  put("bar-next", currentCard()?.title ?? t("next_nothing"));
}

export function wireBar(): void {
  byId("strip").addEventListener("click", (event) => {
    event.preventDefault();
    goView("answer", true);
    byId("answer").focus();
    byId("verdict").scrollIntoView({ block: "start" });
  });
  byId("bar-step").addEventListener("click", () => {
    goView("guide", true);
    showStep();
  });
}
