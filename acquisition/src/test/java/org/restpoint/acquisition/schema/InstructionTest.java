package org.restpoint.acquisition.schema;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.restpoint.acquisition.instruction.InstructionException;
import org.restpoint.acquisition.instruction.InstructionReader;

class InstructionTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'do':'calibrate','standard':'mid'}",
        "{'id':'7','time':'2026-04-02T14:03:00Z','probe':'no3-a','do':'calibrate','standard':'mid'}",
        "{'time':'2026-04-02T14:03:00.250Z','do':'cancel'}",
        "{'do':'measure'}",
        "{'do':'measure','sample':'S-1'}",
        "{'do':'measure','sample':{'number':'S-1','field':'north','depthTopCentimetres':0}}",
        "{'do':'measure','sample':'S-1','recipe':'tile'}",
        "{'do':'measure','sample':'S-1','private':true}",
        "{'do':'sample','sample':{'number':'S-1'}}",
        "{'do':'sample','sample':{'number':'S-1','grower':'','taken':'2026-04-02t09:15+02'}}",
        "{'do':'sample','sample':{'number':'S-1','grower':'A','farm':'B','field':'C','tract':'D',"
            + "'kind':'tile water','depthTopCentimetres':0,'depthBottomCentimetres':30.5,"
            + "'taken':'2026-04-02T09:15:00.5-05:00','takenBy':'E','latitude':-90,'longitude':180,"
            + "'cooled':true,'keptCelsius':4,'containerRinsed':false,'moisturePercent':18.5,"
            + "'recipe':'F','notes':'G'}}",
        "{'do':'verify','standard':'mid'}",
        "{'do':'verify','role':'check-standard','standard':'mid'}",
        "{'do':'verify','role':'blank'}",
        "{'do':'verify','role':'duplicate','sample':'S-1'}",
        "{'do':'verify','role':'spike','sample':'S-1'}",
        "{'do':'soak'}",
        "{'do':'soak','minutes':1}",
        "{'do':'soak','minutes':10080}",
        "{'do':'rinsed'}",
        "{'do':'replaced'}",
        "{'do':'replaced','part':'electrode'}",
        "{'do':'accept-standard'}",
        "{'do':'accept-standard','because':'a new bottle'}",
        "{'do':'forget','sample':'S-1'}",
        "{'do':'forget'}",
        "{'id':'a','do':'cancel'}",
        "{'do':'batch','cups':[{'cup':'1','standard':'mid'},{'cup':'2','sample':'S-1'}]}",
        "{'do':'batch','cups':[{'cup':'3','check':'mid'},{'cup':'7','rinse':true}]}",
        "{'do':'batch','cups':[{'cup':'2','sample':{'number':'S-1','field':'north'}}]}",
        "{'do':'next'}",
        "{'do':'next','skip':true}",
        "{'do':'in-place'}",
        "{'do':'in-place','cup':'5'}",
        "{'do':'done'}"
      })
  void whatTheReaderTakesIsValid(String text) {
    String json = text.replace('\'', '"');
    assertThat(InstructionReader.read(json).instruction().task().word())
        .isEqualTo(Schemas.parse(json).path("do").asText());
    assertThat(Schemas.problems("instruction", json)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{}",
        "[]",
        "'measure'",
        "null",
        "{'do':'dance'}",
        "{'do':7}",
        "{'do':null}",
        "{'do':'Measure'}",
        "{'standard':'mid'}",
        "{'do':'calibrate'}",
        "{'do':'calibrate','standard':''}",
        "{'do':'calibrate','standard':'  '}",
        "{'do':'calibrate','standard':5}",
        "{'do':'calibrate','standard':null}",
        "{'do':'calibrate','standard':'mid','sample':'S-1'}",
        "{'do':'calibrate','standards':'mid'}",
        "{'do':'measure','sample':5}",
        "{'do':'measure','recipe':5}",
        "{'do':'measure','recipe':' '}",
        "{'do':'verify','standard':'mid','recipe':'tile'}",
        "{'do':'measure','sample':['S-1']}",
        "{'do':'measure','sample':null}",
        "{'do':'measure','standard':'mid'}",
        "{'do':'measure','sample':{}}",
        "{'do':'measure','sample':{'number':'S-1','depth':30}}",
        "{'do':'sample'}",
        "{'do':'sample','sample':'S-1'}",
        "{'do':'sample','sample':{'number':''}}",
        "{'do':'sample','sample':{'number':17}}",
        "{'do':'sample','sample':{'number':'S-1','kind':'mud'}}",
        "{'do':'sample','sample':{'number':'S-1','latitude':90.1,'longitude':0}}",
        "{'do':'sample','sample':{'number':'S-1','latitude':42}}",
        "{'do':'sample','sample':{'number':'S-1','taken':'2026-04-02T09:15:00'}}",
        "{'do':'sample','sample':{'number':'S-1','cooled':'yes'}}",
        "{'do':'cancel','sample':{'number':'S-1'}}",
        "{'do':'verify','standard':5}",
        "{'do':'verify','role':'referee','standard':'mid'}",
        "{'do':'verify','role':5,'standard':'mid'}",
        "{'do':'verify','role':'blank','standard':'mid'}",
        "{'do':'verify','role':'blank','sample':'S-1'}",
        "{'do':'verify','role':'duplicate'}",
        "{'do':'verify','role':'duplicate','standard':'mid'}",
        "{'do':'verify','role':'spike','sample':{'number':'S-1'}}",
        "{'do':'verify','standard':'mid','sample':'S-1'}",
        "{'do':'soak','minutes':0}",
        "{'do':'soak','minutes':10081}",
        "{'do':'soak','minutes':'20'}",
        "{'do':'soak','minutes':null}",
        "{'do':'soak','standard':'mid'}",
        "{'do':'rinsed','minutes':5}",
        "{'do':'rinsed','part':'membrane'}",
        "{'do':'replaced','part':'cap'}",
        "{'do':'accept-standard','because':''}",
        "{'do':'accept-standard','standard':'mid'}",
        "{'do':'forget','sample':{'number':'S-1'}}",
        "{'do':'forget','number':'S-1'}",
        "{'do':'cancel','because':'so'}",
        "{'do':'cancel','sample':'S-1'}",
        "{'do':'cancel','id':7}",
        "{'do':'cancel','id':''}",
        "{'do':'cancel','probe':1}",
        "{'do':'cancel','time':true}",
        "{'do':'cancel','time':'14:03'}",
        "{'do':'cancel','hurry':true}",
        "{'do':'batch'}",
        "{'do':'batch','cups':[]}",
        "{'do':'batch','cups':'1'}",
        "{'do':'batch','cups':[{'standard':'mid'}]}",
        "{'do':'batch','cups':[{'cup':1,'standard':'mid'}]}",
        "{'do':'batch','cups':[{'cup':'1'}]}",
        "{'do':'batch','cups':[{'cup':'1','standard':'mid','sample':'S-1'}]}",
        "{'do':'batch','cups':[{'cup':'1','rinse':false}]}",
        "{'do':'batch','cups':[{'cup':'1','standard':'mid','hurry':true}]}",
        "{'do':'next','skip':'yes'}",
        "{'do':'next','cup':'5'}",
        "{'do':'in-place','cup':5}",
        "{'do':'in-place','skip':true}",
        "{'do':'done','skip':true}",
        "{'do':'measure','cups':[]}"
      })
  void whatTheReaderRefusesForItsShapeIsNotValid(String text) {
    String json = text.replace('\'', '"');
    assertThatThrownBy(() -> InstructionReader.read(json)).isInstanceOf(InstructionException.class);
    assertThat(Schemas.problems("instruction", json)).isNotEmpty();
  }

  @Test
  void aTextOfTwoHundredCharactersIsTheLongest() {
    String longest = "{\"do\":\"cancel\",\"id\":\"%s\"}".formatted("x".repeat(200));
    String longer = "{\"do\":\"cancel\",\"id\":\"%s\"}".formatted("x".repeat(201));
    assertThat(InstructionReader.read(longest).instruction().id()).isPresent();
    assertThat(Schemas.problems("instruction", longest)).isEmpty();
    assertThatThrownBy(() -> InstructionReader.read(longer))
        .isInstanceOf(InstructionException.class);
    assertThat(Schemas.problems("instruction", longer)).isNotEmpty();
  }

  @Test
  void theSchemaKnowsTheWordsOfTheReader() {
    List<String> words = new ArrayList<>();
    Schemas.schema("instruction.json")
        .at("/properties/do/enum")
        .forEach(word -> words.add(word.asText()));
    assertThat(words).isEqualTo(InstructionReader.WORDS);
  }
}
