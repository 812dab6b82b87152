import type { PhraseCode } from "../strapWords.ts";

/** Steps and notes in German. Parts that begin with a comma, a semicolon or a blank follow another part. */
export const strapPhrases: Readonly<Record<PhraseCode, string>> = {
  "cut-pieces": "Jedes Teil der Liste im geraden Fadenlauf zuschneiden, nie schräg; der Streifen ist {cut} breit.",
  "cut-tube":
    "Jedes Teil der Liste im geraden Fadenlauf zuschneiden; nur ein schmaler Schlauch darf schräg liegen. Der Streifen ist {cut} breit.",
  "cut-sheet": "Jedes Teil der Liste in derselben Richtung zuschneiden; der Streifen ist {cut} breit.",
  "cut-leather":
    "Jedes Teil der Liste längs des Rückens zuschneiden, wo die Haut fest ist, und keines aus dem Bauch; der Streifen ist {cut} breit.",
  "interface-fuse": "Vor dem Falten die Einlage aufbügeln oder heften",
  "interface-glue": "Vor dem Falten die Einlage dünn aufkleben (nicht bügeln)",
  "interface-strip-full": ", auf den ganzen Streifen.",
  "interface-facing-full": ", auf die ganze Gegenseite.",
  "interface-strip-reduced": ", auf die mittleren drei Viertel des Streifens.",
  "interface-facing-reduced": ", auf die mittleren drei Viertel der Gegenseite.",
  "interface-strip-quarter": ", auf den Teil des Streifens, der zur Schauseite wird, zwischen den Faltlinien.",
  "interface-facing-quarter": ", auf den Teil der Gegenseite, der zur Schauseite wird, zwischen den Faltlinien.",
  "how-pressed": "; bügeln und stecken oder klammern.",
  "how-taped":
    "; mit schmalem doppelseitigem Klebeband neben der Nahtlinie halten und die Falte flach rollen (kein Bügeleisen).",
  "how-rolled":
    "; mit schmalem doppelseitigem Klebeband neben der Nahtlinie halten und die Falte rund lassen: scharf geknickt bricht Kork.",
  "held-clipped": ", und klammern.",
  "held-taped": ", und neben der Nahtlinie kleben oder klammern.",
  "from-the-edge-before-trimming":
    ", {raw} von der Kante, wie sie jetzt ist: {topstitch} von der beschnittenen Kante.",
  "extra-rows": "Dazwischen noch {rows} steppen, mit {apart} Abstand von Naht zu Naht.",
  "from-the-edge": ", {topstitch} von der Kante.",
  "tie-off": " Löcher bleiben: nicht zurücknähen, die Fadenenden verknoten.",

  "fourfold-centre": "Links auf links die Mittellinie falzen oder zeichnen und wieder öffnen.",
  "fourfold-centre-drawn": "Die Mittellinie auf der linken Seite zeichnen, nicht falzen.",
  "fourfold-edges": "Beide Längskanten einschlagen; jede offene Kante endet {setback} vor der Mittellinie",
  "fourfold-halve": "An der Mittellinie zur Hälfte falten und klammern; der Riemen sollte {width} messen.",
  "fourfold-topstitch": "Erst die offene Kante absteppen, dann die gefaltete",

  "bonded-bond": "Die Lagen links auf links verkleben, pressen und den Kleber aushärten lassen.",
  "bonded-stitch-layers": "Beide Kanten zusätzlich steppen, denn eine Klebung allein kann sich beim Biegen lösen",
  "bonded-stitch": "Beide Kanten steppen",
  "bonded-trim": "Beide Kanten mit scharfer Klinge und Lineal genau auf {width} beschneiden.",
  "bonded-finish": "Die Kanten schleifen oder abschrägen, dann in dünnen Schichten färben oder polieren.",

  "edge-as-cut": "Die offenen Kanten bleiben, wie sie geschnitten sind; lose Fäden mit scharfer Schere abnehmen.",
  "edge-paint":
    "Die offenen Kanten schleifen oder abschrägen und in dünnen Schichten färben; jede trocknen lassen.",
  "edge-burnish": "Die offenen Kanten abschrägen, anfeuchten und mit Holz oder Bein glatt reiben.",

  "corded-measure":
    "Vor dem Zuschnitt ein Stück genau dieses Materials um genau diese Kordel legen und messen; der Versuch gilt mehr als jede Formel.",
  "corded-ends": "Jedes flache Ende um {back} auf sich selbst zurücklegen, verkleben und festnähen.",
  "corded-wrap":
    "Die Kordel zwischen den flachen Enden auf die Mitte des Streifens legen, umwickeln und die Kanten zusammenklammern.",
  "corded-stitch": "Dicht an der Kordel nähen, {allowance} von den offenen Kanten, von Hand oder mit schmalem Fuß.",
  "corded-trim": "Den Steg neben der Naht beschneiden.",
  "corded-finish": "Die Kanten des Stegs färben, einfassen oder umstechen.",

  "turned-sew":
    "Beide Streifen rechts auf rechts an beiden Längskanten zusammennähen, {allowance} von den offenen Kanten; eine Wendeöffnung lassen, wenn beide Enden geschlossen sind.",
  "turned-turn": "Auf rechts wenden und die Nähte genau an die Kante rollen; der Riemen sollte {width} messen.",
  "turned-turn-reveal":
    "Auf rechts wenden und die Nähte nach hinten rollen, sodass neben der Gegenseite {reveal} vom äußeren Streifen zu sehen ist; der Riemen sollte {width} messen.",
  "turned-pad":
    "Das Polster mit einer Schnur oder einem Wendewerkzeug einziehen, bevor das letzte Ende geschlossen wird.",
  "turned-topstitch-facing": "Beide Kanten von der Gegenseite aus absteppen, von deren Kanten gemessen",
  "topstitch-both": "Beide Kanten absteppen",

  "hemmed-hem": "Die Längskante, die man sehen wird, {hem} einschlagen",
  "hemmed-pad": "Das Polster auf das mittlere Drittel legen.",
  "hemmed-fold":
    "Die offene Längskante umschlagen, dann die eingeschlagene darüber; der Riemen sollte {width} messen.",
  "hemmed-setback": "Die eingeschlagene Kante endet {setback} vor der gegenüberliegenden Falte.",
  "hemmed-topstitch": "Entlang der eingeschlagenen Kante absteppen, dann entlang der Falte",

  "three-colour": "Die Längskante, die man sehen wird, vor dem Falten färben und trocknen lassen.",
  "three-paint":
    "Die Längskante, die man sehen wird, vor dem Falten in dünnen Schichten färben und trocknen lassen.",
  "three-burnish": "Die Längskante, die man sehen wird, vor dem Falten abschrägen, anfeuchten und glatt reiben.",
  "three-first": "Die andere Längskante um ein Drittel umschlagen und die Falte andrücken",
  "three-wrap":
    "Das letzte Drittel über die offene Kante schlagen; der Riemen sollte {width} messen, und die sichtbare Kante sollte {setback} vor der gegenüberliegenden Falte enden.",
  "three-topstitch":
    "Von der Seite mit der offenen Kante absteppen, {topstitch} von ihr, dann {topstitch} von der Falte.",

  "tube-sew": "Der Länge nach rechts auf rechts zur Hälfte falten und {allowance} von den offenen Kanten nähen.",
  "tube-turn":
    "Auf rechts wenden und mit der Naht an einer Kante bügeln oder mit dem Finger andrücken; der Schlauch sollte {width} messen.",

  "two-layer-edges":
    "Beide Längskanten jedes Streifens zu seiner Mitte einschlagen; die offenen Kanten dürfen nicht übereinanderliegen",
  "two-layer-lay": "Die Gegenseite links auf links auf den äußeren Streifen legen, {reveal} von jeder Kante",
  "two-layer-topstitch": "Von der Gegenseite aus absteppen, von ihren Kanten aus gemessen",

  "overlay-edges": "Beide Längskanten {turn} einschlagen",
  "overlay-lay": "Den Streifen auf das Gurtband legen, {margin} von jeder Kante",
  "overlay-topstitch": "Die Auflage von ihren Kanten aus absteppen, beide Reihen in derselben Richtung",

  "sleeve-edges":
    "Beide Längskanten zur Mittellinie einschlagen; die offenen Kanten dürfen nicht übereinanderliegen",
  "sleeve-wrap":
    "Das Gurtband an die Mittellinie legen, die Hülle darumschlagen und klammern; erst eine Handlänge umschlagen und den Sitz prüfen.",
  "sleeve-topstitch": "Erst die offene Kante durch das Gurtband absteppen, dann die gefaltete",
  "cover-edges": "Beide Längskanten {turn} einschlagen",
  "cover-wrap":
    "Den Bezug um das Gurtband schlagen, sodass sich seine Kanten auf der Mitte der Rückseite treffen, und sie mit Leiter- oder Zickzackstich verbinden.",
  "cover-topstitch": "Beide Kanten durch das Gurtband absteppen",

  "join-diagonal":
    "Die geraden Enden zweier Streifen rechts auf rechts im rechten Winkel aufeinanderlegen, von Ecke zu Ecke nähen, auf 1/4 in beschneiden und auseinanderbügeln; bei jedem Ansatz wiederholen.",
  "join-straight": "Die Streifen Ende an Ende rechts auf rechts nähen und die Nähte auseinanderbügeln.",
  "join-lapped": "Beide Enden ausdünnen, überlappen, verkleben und quer über die Überlappung nähen.",

  "edges-skived":
    "Die Kanten, die umgelegt werden, auf der linken Seite von der offenen Kante bis zur Falzlinie und nicht weiter auf {skived} schärfen.",

  "end-reduced":
    "Die Enden, die umgelegt oder eingeschlagen werden, schärfen oder Lagen wegschneiden, bis der Riemen dort {end} dick ist.",
  "end-tucked":
    "An jedem Ende, das geschlossen wird, {tucked} auf die linke Seite einschlagen, bevor die Längskanten gefaltet oder genäht werden.",
  "end-tab": "Die Lasche über den Ring legen, Schenkel von {leg}, und 3/4 bis 1 in darunter quer über beide nähen.",
  "end-thread":
    "Einfädeln: ein Ende um den Mittelsteg des Schiebers und festnähen; das andere durch den Ring, zurück über beide äußeren Stege des Schiebers und dann an sein eigenes Teil. Den Schieber bewegen, bevor das letzte Ende festgenäht wird.",
  "end-fold-back":
    "{back} des Endes um seinen Beschlag legen und zweimal quer nähen; über die doppelten Lagen das Handrad drehen.",
  "end-fold-back-under":
    "{under} des Endes einschlagen, {back} um den Beschlag legen und zweimal quer nähen; über die dicken Stellen das Handrad drehen.",
  "end-spare": "Um {spare} kürzen: so viel wurde zu lang genäht.",
  "end-short-part":
    "Das kurze Teil, zugeschnitten {short} lang, ebenso arbeiten; eines seiner Enden um den Ring legen und quer nähen.",
  "end-seam": "Das Ende mit {seam} in die Naht der Tasche heften und zweimal darübernähen.",

  "strap-stout":
    "{thickness} dick bei {width} Breite ist der Riemen fast eine Kordel: schwer zu falten, und er rollt.",
  "hard-to-turn":
    "Ein Schlauch von {length} Länge und {width} Breite lässt sich aus diesem Material kaum wenden: breiter, dünner oder in zwei Teilen arbeiten.",
  "tube-bias":
    "Ein schmaler Schlauch, der nichts trägt, darf von Hand schräg zugeschnitten werden: er wendet und biegt sich leichter.",
  "burnish-leather":
    "Nur pflanzlich gegerbtes Leder lässt sich polieren: Kanten anderer Materialien färben oder einfassen.",
  "home-machine":
    "{layers} Lagen, {thickness} dick ({where}): eine Haushaltsmaschine schafft etwa {limit}. Schafft Ihre mehr, geben Sie es an.",
  "machine-skive": "Das Leder an den Falten und Enden ausschärfen: dort ist die halbe Dicke üblich.",
  "ring-length-unknown": "Der Ring selbst zählt zur getragenen Länge: messen und nach der Breite angeben.",
  "clasp-length-unknown": "Die Schließe selbst zählt zur getragenen Länge: messen und nach der Breite angeben.",
  "no-interfacing": "Gewebe ohne Einlage verzieht und verdreht sich beim Falten und Absteppen: Einlage verwenden.",
  "raw-edge-frays": "Eine offene Gewebekante ist sichtbar und wird ausfransen.",
  "knit-backing":
    "Ein gestrickter Träger gibt in der Breite nach: Riemen liegen längs der Rolle, wenn nichts anderes gesagt ist.",
  "unknown-backing":
    "Kunstleder dehnt sich je nach Hersteller anders: erst in beide Richtungen ziehen und alle Riemen in einer Richtung zuschneiden.",
  "no-thickness": "Dicke 0 ergibt die runde Regel des Handwerks; für das wahre Maß einen gefalteten Stapel messen.",
  "ring-loose":
    "Der Ring ist innen {inner} breit: ein Riemen von {width} wandert darin (üblich sind ±{tolerance}).",
  "slider-loose":
    "Der Schieber ist innen {inner} breit: ein Riemen von {width} wandert darin (üblich sind ±{tolerance}).",
  "clasp-loose":
    "Die Schließe ist innen {inner} breit: ein Riemen von {width} wandert darin (üblich sind ±{tolerance}).",
  "slider-opening-unknown": "Die Öffnung des Schiebers messen: dieser Riemen braucht etwa {needed}.",
  "slider-tight": "Der Schieber öffnet {opening}; ein Riemen von {thickness} Dicke braucht etwa {needed}.",
  "slider-slips":
    "Der Schieber öffnet {opening}, weit mehr als ein Riemen von {thickness} Dicke braucht: er wird rutschen.",
  "slider-fixed-bar":
    "Ein Riemen von {thickness} Dicke rutscht auf einem Schieber mit festem Steg: einen mit beweglichem Steg nehmen oder einen dickeren Riemen.",
  "machine-thickness":
    "{layers} Lagen, {thickness} dick ({where}): mehr als die {limit}, die die Maschine schafft.",
  "machine-layers": "{layers} Lagen ({where}): mehr als die {most}, die die Maschine schafft.",
  "edges-collide":
    "Offene Kanten {gap} neben der Mittelfalte laufen in die Falte: sie müssen mindestens {least} zurückbleiben.",
  "stitch-short": "Stiche von {stitch} perforieren Kunstleder: {least} oder länger wählen.",
  "webbing-width":
    "Das Gurtband wird {width} breit; die nächste Handelsbreite ist {nearest}. Das Gurtband angeben, dann richtet sich der Stoff danach.",
  "tab-short":
    "Schenkel von {leg} sind zu kurz, um unter dem Ring genäht zu werden: sie sollten {least} oder mehr haben.",
  "longer-than-stock":
    "Der Streifen ist {cut} lang, und das längste Stück Stoff gibt {longest} her. Ein Riemen in zwei Teilen mit einem Ring dazwischen braucht keinen Ansatz; Ansätze nur zulassen, wenn weder er noch längerer Stoff infrage kommt.",
  "longer-than-stock-parts":
    "Der Streifen ist {cut} lang, und das längste Stück Stoff gibt {longest} her: Ansätze nur zulassen, wenn längerer Stoff nicht infrage kommt.",
  "no-place-for-join":
    "Kein Ansatz findet Platz neben den befestigten Enden, der Schulter und dem Weg von Ring und Schieber: längeren Stoff nehmen.",
  joined: "Ein Ansatz ist dick und die schwächste Stelle eines tragenden Riemens: wo es geht, vermeiden.",
  "join-loss":
    "Jeder Ansatz gerader Enden kostet {loss}; Enden, die vorher auf 45° geschnitten werden, kosten nur {preCut}.",
};
