#include "ui/dialogs/engine_facts_form.h"

#include "core/support/text.h"
#include "core/wording/wording.h"
#include "ui/preferences.h"
#include "ui/widgets/quantity_field.h"
#include "ui/widgets/whole_number_field.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QSpinBox>

namespace coilbook {

namespace {

constexpr int kMostRacesAhead = 60;
constexpr int kLeastRpm = 1000;
constexpr int kMostRpm = 30000;

} // namespace

EngineFactsForm::EngineFactsForm(const Preferences& preferences, QWidget* parent)
    : FaultForm(parent)
    , m_name(new QLineEdit(this))
    , m_serial(new QLineEdit(this))
    , m_limit(new QuantityField(preferences.forceUnit(), this))
    , m_racesAhead(new QSpinBox(this))
    , m_caution(new QComboBox(this))
    , m_rpmCeiling(new WholeNumberField(kLeastRpm, kMostRpm, this))
    , m_springsRunIn(new QCheckBox(tr("Springs are &broken in before their baseline"), this))
    , m_correctsTemperature(
          new QCheckBox(tr("&Judge by forces at 20 °C, where a temperature is noted"), this))
    , m_exposure(new QComboBox(this))
    , m_lapsMissing(new QLabel(this)) {
    m_springsRunIn->setObjectName(QStringLiteral("springsRunIn"));
    m_correctsTemperature->setObjectName(QStringLiteral("correctsTemperature"));
    m_correctsTemperature->setToolTip(
        tr("Springs read softer hot. Spring steel is taken to lose 2.5 % of its force per 100 °C, "
           "a figure from memory; each spring can have its own."));
    m_exposure->setObjectName(QStringLiteral("exposure"));
    m_lapsMissing->setObjectName(QStringLiteral("lapsMissing"));
    m_lapsMissing->setTextFormat(Qt::PlainText);
    m_lapsMissing->setWordWrap(true);
    m_exposure->addItem(tr("races"), static_cast<int>(ExposureUnit::Races));
    m_exposure->addItem(tr("laps, where all are known"), static_cast<int>(ExposureUnit::Laps));
    m_name->setObjectName(QStringLiteral("name"));
    m_serial->setObjectName(QStringLiteral("serial"));
    m_limit->setObjectName(QStringLiteral("limit"));
    m_racesAhead->setObjectName(QStringLiteral("racesAhead"));
    m_caution->setObjectName(QStringLiteral("caution"));
    m_rpmCeiling->setObjectName(QStringLiteral("rpmCeiling"));
    m_racesAhead->setRange(0, kMostRacesAhead);
    const auto addCaution = [this](Caution caution, const QString& words) {
        m_caution->addItem(words, QVariant::fromValue(static_cast<int>(caution)));
    };
    addCaution(Caution::Cautious, tr("early, when there is a fair chance (3 in 10)"));
    addCaution(Caution::Even, tr("when it is more likely than not (5 in 10)"));
    addCaution(Caution::Thrifty, tr("late, when there is little doubt left (7 in 10)"));
    m_caution->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_caution->setMinimumContentsLength(24);
    m_caution->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    m_rpmCeiling->setPlaceholderText(tr("None"));

    addField(tr("&Name of the engine"), m_name);
    addField(tr("&Seal or serial number"), m_serial);
    addField(tr("S&wap a spring that has lost"), m_limit);
    addField(tr("Look &ahead, in races"), m_racesAhead);
    addField(tr("&Call a spring past the limit"), m_caution);
    addField(tr("&Over-rev above, in rpm"), m_rpmCeiling);
    addField(QString(), m_springsRunIn);
    addField(QString(), m_correctsTemperature);
    addField(tr("Wear &goes by"), m_exposure);
    addField(QString(), m_lapsMissing);
    tellLapsMissing({});
    setEngine(Engine{});
}

void EngineFactsForm::setEngine(const Engine& engine) {
    clearFaults();
    m_name->setText(engine.name);
    m_serial->setText(engine.serial);
    m_limit->setForce(engine.rules.limit);
    m_racesAhead->setValue(engine.rules.racesAhead);
    m_caution->setCurrentIndex(m_caution->findData(static_cast<int>(engine.rules.caution)));
    m_rpmCeiling->setValue(engine.rpmCeiling);
    m_springsRunIn->setChecked(engine.springsRunIn);
    m_correctsTemperature->setChecked(engine.correctsTemperature);
    m_exposure->setCurrentIndex(m_exposure->findData(static_cast<int>(engine.exposureUnit)));
}

void EngineFactsForm::tellLapsMissing(const std::vector<int>& races) {
    QStringList numbers;
    for (const int race : races) {
        numbers << QString::number(race);
    }
    m_lapsMissing->setText(races.size() == 1
                               ? tr("Laps are missing of race %1: until it has them, wear goes by "
                                    "races.")
                                     .arg(numbers.join(QString()))
                               : tr("Laps are missing of races %1: until they have them, wear "
                                    "goes by races.")
                                     .arg(numbers.join(QStringLiteral(", "))));
    m_lapsMissing->setVisible(!races.empty());
}

bool EngineFactsForm::readInto(Engine& engine) {
    clearFaults();
    bool holds = true;
    const auto refuse = [&](QWidget* field, const QString& sentence) {
        showFault(field, sentence);
        holds = false;
    };
    engine.name = normalised(m_name->text());
    engine.serial = normalised(m_serial->text());
    engine.rules.racesAhead = m_racesAhead->value();
    engine.rules.caution = static_cast<Caution>(m_caution->currentData().toInt());
    engine.rpmCeiling = m_rpmCeiling->value();
    engine.springsRunIn = m_springsRunIn->isChecked();
    engine.correctsTemperature = m_correctsTemperature->isChecked();
    engine.exposureUnit = static_cast<ExposureUnit>(m_exposure->currentData().toInt());
    if (m_rpmCeiling->isFault()) {
        refuse(m_rpmCeiling, tr("Give a whole number from %1 to %2, or leave this empty.")
                                 .arg(QString::number(kLeastRpm), QString::number(kMostRpm)));
    }
    if (const std::optional<Force> limit = m_limit->force()) {
        engine.rules.limit = *limit;
    } else {
        refuse(m_limit, wording::sentence(fail(LogbookFault::BadLimit, {m_limit->text()}).value()));
    }
    if (engine.name.isEmpty()) {
        refuse(m_name, wording::sentence(
                           fail(LogbookFault::EmptyName, {QStringLiteral("engine")}).value()));
    }
    return holds;
}

QWidget* EngineFactsForm::fieldAt(LogbookFault fault) const {
    switch (fault) {
    case LogbookFault::EngineNameTaken:
    case LogbookFault::EmptyName:
    case LogbookFault::NameDiffersInCaseOnly:
        return m_name;
    case LogbookFault::BadLimit:
        return m_limit;
    case LogbookFault::BadRacesAhead:
        return m_racesAhead;
    case LogbookFault::BadCaution:
        return m_caution;
    default:
        return nullptr;
    }
}

} // namespace coilbook
