"""The look of the HTML sheet: dark ink on white for the sun, a dark scheme for the eve, A4 in two columns on paper.

Every text has a contrast of at least 7:1 on its ground (WCAG 2.1, 1.4.6), every target is at least 44 px high.
"""

LIGHT = {
    "ground": "#ffffff",
    "ink": "#14181f",
    "muted": "#444c58",
    "stop": "#8a2019",
    "look": "#674200",
    "line": "#767e8a",
}
DARK = {
    "ground": "#14171b",
    "ink": "#f2f0ea",
    "muted": "#bcc3ca",
    "stop": "#ff9f94",
    "look": "#f0c46c",
    "line": "#7d858f",
}


def _variables(colours: dict[str, str]) -> str:
    return "".join(f"--{name}:{colour};" for name, colour in colours.items())


def style(page_foot: str) -> str:
    """The style sheet; `page_foot` stands on every printed page where the browser can do that."""
    quoted = page_foot.replace("\\", "\\\\").replace('"', '\\"').replace("<", "\\3c ").replace("\n", " ")
    return (
        f":root{{color-scheme:light dark;{_variables(LIGHT)}}}"
        f"@media screen and (prefers-color-scheme:dark){{:root{{{_variables(DARK)}}}}}"
        + _SCREEN
        + _SHAPES
        + _PRINT.replace("PAGE_FOOT", f'"{quoted}"')
    )


_SCREEN = """
*{box-sizing:border-box}
body{margin:0;background:var(--ground);color:var(--ink);font:1.0625rem/1.4 system-ui,sans-serif;
font-variant-numeric:tabular-nums;overflow-wrap:anywhere}
main{max-width:60rem;margin:0 auto;padding:1rem}
h1{font-size:1.75rem;line-height:1.2;margin:0}
h2{font-size:1.2rem;margin:1.75rem 0 .25rem}
h3{font-size:1.0625rem;margin:1.25rem 0 0}
h2,h3{display:flex;flex-wrap:wrap;gap:0 1rem;justify-content:space-between;align-items:baseline;
border-bottom:2px solid var(--ink);padding-bottom:.2rem}
h3{border-bottom-width:1px}
h2 small,h3 small,.why,.quiet{font-size:.9375rem;font-weight:400;color:var(--muted)}
p{margin:.25rem 0}
.counts{font-size:1.2rem;font-weight:600}
ul,ol{list-style:none;margin:0;padding:0}
li{border-bottom:1px solid var(--line);padding:.4rem 0}
.tick{padding:0}
.tick label{display:grid;grid-template-columns:2.25rem 1fr auto;gap:.1rem .75rem;align-items:center;min-height:44px;
padding:.35rem 0;cursor:pointer}
.tick input{width:2rem;height:2rem;margin:0;accent-color:var(--ink)}
.name{font-weight:600}
.why{display:block}
.mass{white-space:nowrap;font-weight:600;text-align:right}
.finding{display:grid;grid-template-columns:8rem 1fr;gap:.1rem .75rem}
.state{display:flex;align-items:center;gap:.5rem;font-weight:600;align-self:start;white-space:nowrap}
.stop{color:var(--stop)}
.look{color:var(--look)}
.not-known{color:var(--muted)}
.remedy{margin-left:1rem}
.ask{border-bottom:0;display:grid;grid-template-columns:1fr;gap:.25rem 1rem}
.ask.timed{grid-template-columns:1fr 9rem;align-items:end}
.ask input{width:100%;min-height:44px;font:inherit;color:inherit;background:transparent;border:0;
border-bottom:1px solid var(--ink);border-radius:0;padding:.25rem}
table{border-collapse:collapse;width:100%}
th,td{text-align:left;vertical-align:top;padding:.35rem .75rem .35rem 0;border-bottom:1px solid var(--line)}
th{font-weight:600}
td.mass{text-align:right}
footer{margin-top:2rem;border-top:2px solid var(--ink);padding-top:.5rem}
:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
@media screen and (max-width:30rem){.finding,.ask.timed{grid-template-columns:1fr}}
"""

_SHAPES = """
.shape{flex:none;display:inline-block;width:14px;height:14px;position:relative}
.stop .shape{border:7px solid}
.stop .shape::after{content:"";position:absolute;left:-4px;top:-1px;width:8px;border-top:2px solid var(--ground)}
.look .shape{width:11px;height:11px;border:5.5px solid;transform:rotate(45deg)}
.not-known .shape{border:2px dashed;border-radius:50%}
"""
"""Drawn with borders, which are printed where backgrounds are not."""

_PRINT = """
@page{size:A4;margin:12mm;@bottom-left{content:PAGE_FOOT;font:8pt system-ui,sans-serif}}
@media print{
body{font-size:9.5pt;line-height:1.25}
main{max-width:none;padding:0}
h1{font-size:19pt}
h2{font-size:12pt;margin:5mm 0 0;break-after:avoid}
h3{font-size:10.5pt;margin:3mm 0 0;break-after:avoid}
h2 small,h3 small,.why,.quiet{font-size:8.5pt}
.columns>*{break-inside:avoid}
.columns{columns:2;column-gap:8mm}
section section,.whole,li{break-inside:avoid}
li{padding:1mm 0}
.finding{grid-template-columns:28mm 1fr}
.remedy{margin-left:2mm}
.tick label{min-height:0;padding:.8mm 0;grid-template-columns:5mm 1fr auto;gap:0 2mm}
.tick input{appearance:none;width:4mm;height:4mm;border:1px solid #000;border-radius:.6mm}
.ask input{min-height:6mm}
.ask.timed{grid-template-columns:1fr 20mm}
th,td{padding:.8mm 2mm .8mm 0}
}
"""
